using WeldTrace.Documents.Layout;
using WeldTrace.Engineering.Paths;

namespace WeldTrace.Documents.Drawings;

/// <summary>A circular seam with the excursions of a run at the angle where they happened.</summary>
internal sealed class SeamDrawing(SeamPlan plan) : Drawing
{
    private const double LabelRoom = 24;
    private const double Shortest = 1.6;
    private const double PointSize = 3.5;

    public override string AlternativeText => Seam + Where + Points;

    private string Where =>
        plan.Cut is { } cut
            ? FormattableString.Invariant(
                $" The section was cut {cut.Degrees:0.#}° along the travel from the start."
            )
            : "";

    private string Points =>
        plan.Points.Count == 0
            ? ""
            : " Marked: " + string.Join("; ", plan.Points.Select(InWords)) + ".";

    private string Seam =>
        plan.Excursions.Count == 0
            ? "Circular seam without excursions, seen from the shoulder side."
            : "Circular seam, seen from the shoulder side, with excursions: "
                + string.Join("; ", plan.Excursions.Select(InWords))
                + ".";

    private int Sense => plan.Travel == RotationSense.Clockwise ? 1 : -1;

    private double Whole =>
        plan.Repair is { } repair ? Degrees(repair.Length.Metres) : 360 + plan.Overlap.Degrees;

    // Where the run plunged.
    private double Begin => plan.Start.Degrees + (Sense * Degrees(plan.Repair?.From.Metres ?? 0));

    public override double Height(double width) => width;

    public override void Draw(Surface surface, double width)
    {
        var centre = new Spot(width / 2, width / 2);
        var radius = (width / 2) - LabelRoom;
        var travelled = Math.Min(Whole, Travelled());
        surface.Circle(centre, radius, 0.5, Tone.Rule);
        surface.Arc(centre, radius, Begin, Sense * Math.Min(travelled, 360), 1.8);
        if (travelled > 360)
        {
            var overlap = travelled - 360;
            surface.Arc(centre, radius - 3.5, Begin, Sense * overlap, 1.2);
        }

        DrawEnds(surface, centre, radius, travelled);
        DrawCut(surface, centre, radius);
        foreach (var excursion in plan.Excursions)
        {
            DrawExcursion(surface, centre, radius, excursion);
        }

        foreach (var point in plan.Points)
        {
            DrawPoint(surface, centre, radius, point);
        }
    }

    private void DrawEnds(Surface surface, Spot centre, double radius, double travelled)
    {
        var start = Begin;
        surface.Disc(centre.Polar(radius, start), 3, Tone.Ink);
        var end = centre.Polar(
            travelled > 360 ? radius - 3.5 : radius,
            start + (Sense * travelled)
        );
        surface.Disc(end, 3, Tone.Paper);
        surface.Circle(end, 3, 0.9);
        surface.Text(
            "start",
            centre.Polar(radius - 14, start - (Sense * 9)),
            Styles.Drawing,
            TextAnchor.Middle
        );
        surface.Text(
            travelled < Whole - 0.5 ? "stopped" : "exit",
            centre.Polar(radius - 14, start + (Sense * (travelled + 9))),
            Styles.Drawing,
            TextAnchor.Middle
        );
        Arrow.Along(surface, centre, radius - 9, start + (Sense * 70), Sense * 40, 1);
        surface.Text(
            "travel",
            centre.Polar(radius - 24, start + (Sense * 90)),
            Styles.Drawing,
            TextAnchor.Middle
        );
    }

    private void DrawCut(Surface surface, Spot centre, double radius)
    {
        if (plan.Cut is not { } cut)
        {
            return;
        }

        var angle = plan.Start.Degrees + (Sense * cut.Degrees);
        surface.Line(centre.Polar(radius - 14, angle), centre.Polar(radius + 12, angle), 1.4);
        surface.Text(
            "cut",
            centre.Polar(radius - 22, angle),
            Styles.DrawingStrong,
            TextAnchor.Middle
        );
    }

    private void DrawExcursion(Surface surface, Spot centre, double radius, SeamExcursion excursion)
    {
        var from = Degrees(excursion.From.Metres);
        var sweep = Math.Max(
            Degrees(excursion.To.Metres) - from,
            Shortest / radius * 180 / Math.PI
        );
        var begin = plan.Start.Degrees + (Sense * from);
        var middle = begin + (Sense * sweep / 2);
        surface.Arc(centre, radius + 4, begin, Sense * sweep, 5, Tone.Ink);
        surface.Line(centre.Polar(radius, middle), centre.Polar(radius + 12, middle), 0.4);
        var label = centre.Polar(radius + 17, middle);
        surface.Text(excursion.Number, label, Styles.DrawingStrong, TextAnchor.Middle);
    }

    private void DrawPoint(Surface surface, Spot centre, double radius, SeamPoint point)
    {
        var angle = plan.Start.Degrees + (Sense * point.Along.Degrees);
        var at = centre.Polar(radius - 10, angle);
        switch (point.Shape)
        {
            case SeamPointShape.Bar:
                surface.Line(
                    centre.Polar(radius - 14, angle),
                    centre.Polar(radius + 6, angle),
                    1.4
                );
                break;
            case SeamPointShape.Ring:
                surface.Circle(at, PointSize, 0.9);
                break;
            default:
                surface.Polyline(Outline(point.Shape, at), 0.9);
                break;
        }

        surface.Text(
            point.Letter,
            centre.Polar(radius - 22, angle),
            Styles.DrawingStrong,
            TextAnchor.Middle
        );
    }

    private static Spot[] Outline(SeamPointShape shape, Spot at)
    {
        double[] corners =
            shape == SeamPointShape.Diamond ? [0, 90, 180, 270, 0] : [0, 120, 240, 0];
        return [.. corners.Select(corner => at.Polar(PointSize, corner))];
    }

    private static string InWords(SeamPoint point) =>
        FormattableString.Invariant(
            $"{point.Letter}, {point.What}, {point.Along.Degrees:0.#}° along the travel from the start"
        );

    private double Travelled() =>
        plan.Travelled is { } path ? Math.Max(0, Degrees(path.Metres)) : Whole;

    private double Degrees(double metres) =>
        plan.TrackRadius.Metres > 0 ? metres / plan.TrackRadius.Metres * 180 / Math.PI : 0;

    private static string InWords(SeamExcursion excursion) =>
        FormattableString.Invariant(
            $"{excursion.Number}, {excursion.Parameter}, from {excursion.From.Millimetres:0} mm to {excursion.To.Millimetres:0} mm of the path"
        );
}
