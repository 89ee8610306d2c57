using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Components.Drawings;

/// <summary>A circular seam laid out in drawing units; the overlap lies on a circle of its own inside the first turn.</summary>
public sealed class SeamChart
{
    private const double Radius = 150;
    private const double OverlapRadius = 138;
    private const double DotRadius = 120;
    private const double DotSize = 8;
    private static readonly PlanGeometry Plane = new(200, 200);

    private readonly SeamPlan _plan;
    private readonly UnitSystem _units;

    public SeamChart(SeamPlan plan, UnitSystem units)
    {
        (_plan, _units) = (plan, units);
        var from = plan.Repair?.From ?? Length.Zero;
        Welded = [.. Arcs(from, from + (plan.Travelled ?? plan.Repair?.Length ?? Whole(plan)))];
        Marks = [.. plan.Excursions.Select(Mark)];
    }

    /// <summary>A seam that nobody has travelled.</summary>
    public static SeamChart Empty { get; } =
        new(
            new SeamPlan
            {
                TrackRadius = Length.FromMetres(1),
                Travel = RotationSense.Clockwise,
                Travelled = Length.Zero,
            },
            UnitSystem.Metric
        );

    /// <summary>Path data of the planned track.</summary>
    public string Track => Plane.Arc(Radius, _plan.Start.Degrees, 360);

    /// <summary>Path data of what was welded: the first turn, then the overlap.</summary>
    public IReadOnlyList<string> Welded { get; }

    public IReadOnlyList<SeamMark> Marks { get; }

    public string StartBar => Plane.Radial(Radius - 10, Radius + 10, _plan.Start.Degrees);

    /// <summary>Path data of the place where a section was cut; null when none was.</summary>
    public string? CutBar =>
        CutAngle is { } angle ? Plane.Radial(Radius - 26, Radius + 18, angle) : null;

    /// <summary>Where the word for it stands.</summary>
    public (double X, double Y) CutLabel => Plane.Point(Radius - 40, CutAngle ?? 0);

    /// <summary>The cut in words, to follow the description; empty when there is none.</summary>
    public string CutSentence =>
        _plan.Cut is { } cut
            ? $"The section was cut {SensibleDigits.Fixed(cut.Degrees, 1)}° along the travel from the start."
            : "";

    private double? CutAngle =>
        _plan.Cut is { } cut ? _plan.Start.Degrees + (Sign * cut.Degrees) : null;

    public string TravelArrow =>
        Plane.ArrowHead(Radius, _plan.Start.Degrees + (35 * Sign), _plan.Travel, 16);

    /// <summary>1 when the travel is clockwise as drawn, else -1.</summary>
    public int Sign => PlanGeometry.Sign(_plan.Travel);

    /// <summary>Start of the pass, clockwise from the datum mark at the top.</summary>
    public string StartDegrees =>
        _plan.Start.Degrees.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Places that other records speak of.</summary>
    public IReadOnlyList<SeamDot> Dots => [.. _plan.Points.Select(Dot)];

    private SeamDot Dot(SeamPoint point)
    {
        var angle = _plan.Start.Degrees + (Sign * point.Along.Degrees);
        return new SeamDot(
            point.Letter,
            point.Shape switch
            {
                SeamPointShape.Bar => Plane.Radial(Radius - 26, Radius + 14, angle),
                SeamPointShape.Ring => Plane.Ring(DotRadius, angle, DotSize),
                SeamPointShape.Diamond => Plane.Outline(DotRadius, angle, DotSize, 4),
                _ => Plane.Outline(DotRadius, angle, DotSize, 3),
            },
            Plane.Point(DotRadius - 20, angle),
            $"{point.What}, {SensibleDigits.Fixed(point.Along.Degrees, 1)}° along the travel from the start"
        );
    }

    private SeamMark Mark(SeamExcursion excursion)
    {
        var middle = (excursion.From + excursion.To) / 2;
        var inOverlap = TurnDegrees(middle) > 360;
        var angle = _plan.Start.Degrees + (Sign * TurnDegrees(middle));
        var (near, far, label) = inOverlap
            ? (OverlapRadius - 6, 118, 106)
            : (Radius + 6, 170, 182.0);
        return new SeamMark(
            excursion,
            [.. Arcs(excursion.From, excursion.To)],
            Plane.Radial(near, far, angle),
            Plane.Point(label, angle),
            $"{excursion.Parameter}: {Show(excursion.From)} to {Show(excursion.To)} from the start, "
                + $"{Degrees(excursion.From)} to {Degrees(excursion.To)} along the travel"
                + (inOverlap ? ", in the overlap." : ".")
        );
    }

    private IEnumerable<string> Arcs(Length from, Length to)
    {
        var (a, b) = (TurnDegrees(from), TurnDegrees(to));
        if (a < 360 && b > a)
        {
            yield return Arc(Radius, a, Math.Min(b, 360));
        }

        if (b > 360)
        {
            yield return Arc(OverlapRadius, Math.Max(a, 360), b);
        }
    }

    private string Arc(double radius, double from, double to) =>
        Plane.Arc(radius, _plan.Start.Degrees + (Sign * from), Sign * Math.Max(to - from, 0.8));

    private double TurnDegrees(Length path) =>
        path.Metres / _plan.TrackRadius.Metres * 180 / Math.PI;

    private static Length Whole(SeamPlan plan) =>
        plan.TrackRadius * ((2 * Math.PI) + plan.Overlap.Radians);

    private string Show(Length length) => UnitText.For(length, _units, 3).ToString();

    private string Degrees(Length path) => SensibleDigits.Fixed(TurnDegrees(path), 0) + "°";
}
