using WeldTrace.Documents.Layout;
using WeldTrace.Engineering.Paths;

namespace WeldTrace.Documents.Drawings;

/// <summary>Draws one pass on the plan of its joint.</summary>
internal sealed class TrackPainter(
    Surface surface,
    Spot centre,
    RadialScale scale,
    PassTrack track,
    int index
)
{
    private const double ToolAngle = 120;
    private const double SideAngle = 74;
    private const double BetweenTools = 95;
    private const double BetweenSides = 26;

    private readonly double _radius = scale.Of(track.TrackRadius);
    private readonly double _halfBand = (scale.Outer(track) - scale.Inner(track)) / 2;

    private int Sense => track.Travel == RotationSense.Clockwise ? 1 : -1;

    public void Draw(bool isOuterHalf)
    {
        surface.Circle(centre, _radius, 0.7);
        DrawOverlap();
        DrawEnds(isOuterHalf);
        DrawTool(ToolAngle + (index * BetweenTools));
        DrawSides(SideAngle - (index * BetweenSides));
        DrawSides(SideAngle + 180 + (index * BetweenSides));
        DrawName(isOuterHalf);
    }

    private void DrawOverlap()
    {
        if (track.Overlap.Degrees > 0)
        {
            var sweep = Sense * Math.Min(track.Overlap.Degrees, 360);
            surface.Arc(centre, _radius, track.Start.Degrees, sweep, _halfBand * 0.55, Tone.Rule);
            surface.Arc(centre, _radius, track.Start.Degrees, sweep, 0.9);
        }
    }

    private void DrawEnds(bool isOuterHalf)
    {
        var start = track.Start.Degrees;
        var exit = start + (Sense * track.Overlap.Degrees);
        surface.Disc(centre.Polar(_radius, start), 2.3, Tone.Ink);
        var hole = centre.Polar(_radius, exit);
        surface.Disc(hole, 3.2, Tone.Paper);
        surface.Circle(hole, 3.2, 0.9);
        surface.Disc(hole, 0.8, Tone.Ink);
        var outwards = isOuterHalf ? 1 : -1;
        var edge = _radius + (outwards * _halfBand);
        Leader(start, edge, outwards, $"start {track.Name}", -Sense);
        Leader(exit, edge, outwards, $"exit {track.Name}", Sense);
    }

    private void Leader(double degrees, double edge, int outwards, string text, int aside)
    {
        var from = centre.Polar(_radius + (outwards * 3.6), degrees);
        var to = centre.Polar(edge + (outwards * 6), degrees + (aside * 2));
        surface.Line(from, to, 0.35);
        var rightwards = Math.Sin(degrees * Math.PI / 180) + (aside * 0.35);
        var anchor = rightwards >= 0 ? TextAnchor.Left : TextAnchor.Right;
        var nudge = anchor == TextAnchor.Left ? 1.5 : -1.5;
        surface.Text(text, new Spot(to.X + nudge, to.Y - (outwards * 1.5)), Styles.Drawing, anchor);
    }

    private void DrawTool(double degrees)
    {
        var tool = centre.Polar(_radius, degrees);
        surface.Disc(tool, _halfBand, Tone.Paper);
        surface.Circle(tool, _halfBand, 0.6);
        surface.Disc(tool, Math.Max(0.8, _halfBand * 0.16), Tone.Ink);
        var spin = track.Spindle == RotationSense.Clockwise ? 1 : -1;
        Arrow.Along(surface, tool, _halfBand * 0.62, 40, spin * 285, 0.8);
        var clear = (_halfBand + 2) / _radius * 180 / Math.PI;
        Arrow.Along(surface, centre, _radius, degrees + (Sense * clear), Sense * 24, 1.6);
    }

    private void DrawSides(double degrees)
    {
        var distance = _halfBand * 0.58;
        Letters(track.InnerSide, _radius - distance, degrees);
        Letters(track.OuterSide, _radius + distance, degrees);
    }

    private void Letters(WeldSide side, double radius, double degrees)
    {
        var letters = side == WeldSide.Advancing ? "AS" : "RS";
        var at = centre.Polar(radius, degrees);
        surface.Disc(at, 5.4, Tone.Paper);
        surface.Text(letters, at, Styles.DrawingStrong, TextAnchor.Middle);
    }

    private void DrawName(bool isOuterHalf)
    {
        var edge = isOuterHalf ? _radius + _halfBand + 8 : _radius - _halfBand - 9;
        var at = centre.Polar(edge, ToolAngle + (index * BetweenTools));
        var anchor = (isOuterHalf, at.X >= centre.X) switch
        {
            (true, true) => TextAnchor.Left,
            (true, false) => TextAnchor.Right,
            _ => TextAnchor.Middle,
        };
        surface.Text($"pass {track.Name}", at, Styles.DrawingStrong, anchor);
    }
}
