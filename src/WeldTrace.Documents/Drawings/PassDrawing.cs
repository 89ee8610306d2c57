using WeldTrace.Documents.Layout;
using WeldTrace.Engineering.Paths;

namespace WeldTrace.Documents.Drawings;

/// <summary>
/// Plan view of a circular joint from the shoulder side: bands swept by the shoulders, tracks, tools with spindle
/// and travel arrows, sides, starts, overlaps and exit holes.
/// </summary>
internal sealed class PassDrawing(PassPlan plan) : Drawing
{
    private const double LabelRoom = 25;

    public override string AlternativeText =>
        $"Plan view of {plan.JointName} from the shoulder side. "
        + string.Join(' ', plan.Tracks.Select(InWords));

    public override double Height(double width) => width;

    public override void Draw(Surface surface, double width)
    {
        var centre = new Spot(width / 2, width / 2);
        var scale = RadialScale.For(plan, (width / 2) - LabelRoom);
        DrawBands(surface, centre, scale);
        DrawAxes(surface, centre, scale);
        for (var i = 0; i < plan.Tracks.Count; i++)
        {
            var painter = new TrackPainter(surface, centre, scale, plan.Tracks[i], i);
            painter.Draw(isOuterHalf: 2 * i >= plan.Tracks.Count);
        }

        if (scale.IsEnlarged)
        {
            surface.Text(
                "radial distances enlarged",
                new Spot(width, width - 5),
                Styles.Drawing,
                TextAnchor.Right
            );
        }
    }

    private void DrawBands(Surface surface, Spot centre, RadialScale scale)
    {
        foreach (var track in plan.Tracks.OrderByDescending(track => track.TrackRadius))
        {
            surface.Ring(centre, scale.Inner(track), scale.Outer(track), Tone.Tint);
        }

        foreach (var track in plan.Tracks)
        {
            surface.Circle(centre, scale.Inner(track), 0.35, Tone.Rule);
            surface.Circle(centre, scale.Outer(track), 0.35, Tone.Rule);
        }
    }

    private void DrawAxes(Surface surface, Spot centre, RadialScale scale)
    {
        const double Cross = 5;
        surface.Line(
            centre with
            {
                X = centre.X - Cross,
            },
            centre with
            {
                X = centre.X + Cross,
            },
            0.4
        );
        surface.Line(
            centre with
            {
                Y = centre.Y - Cross,
            },
            centre with
            {
                Y = centre.Y + Cross,
            },
            0.4
        );
        if (plan.JointLineRadius is { } radius)
        {
            surface.DashedCircle(centre, scale.Of(radius), 0.5, Tone.Ink, 8, 2, 1.5, 2);
        }
    }

    private static string InWords(PassTrack track) =>
        $"Pass {track.Name}: spindle {Word(track.Spindle)}, travel {Word(track.Travel)},"
        + $" {Word(track.InnerSide)} side inside, {Word(track.OuterSide)} side outside.";

    private static string Word(RotationSense sense) =>
        sense == RotationSense.Clockwise ? "clockwise" : "counter-clockwise";

    private static string Word(WeldSide side) =>
        side == WeldSide.Advancing ? "advancing" : "retreating";
}
