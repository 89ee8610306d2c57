using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Components.Drawings;

/// <summary>One pass laid out for the plan view, in drawing units and degrees clockwise from the top.</summary>
public sealed record DrawnTrack
{
    public required PassTrack Source { get; init; }

    public required double Radius { get; init; }

    public required double Band { get; init; }

    /// <summary>Radius of the exit hole.</summary>
    public required double Pin { get; init; }

    public required double Start { get; init; }

    public required double OverlapDegrees { get; init; }

    public required int Sign { get; init; }

    public required double ArrowAt { get; init; }

    public required (double X, double Y) Exit { get; init; }

    public required (double X, double Y) Tool { get; init; }

    public required (double X, double Y) OuterLabel { get; init; }

    public required (double X, double Y) InnerLabel { get; init; }

    public required (double X, double Y) NameLabel { get; init; }

    /// <summary>Path data of the round arrow that shows the spindle's sense.</summary>
    public required string Spin { get; init; }

    public required string SpinHead { get; init; }

    /// <summary>The pass in one sentence.</summary>
    public required string Sentence { get; init; }

    /// <summary>Places the parts of a pass; the passes are turned against each other so that their labels stay apart.</summary>
    public static DrawnTrack Lay(
        PassTrack track,
        int index,
        double scale,
        double labelsAt,
        PlanGeometry plan,
        UnitSystem units
    )
    {
        var radius = track.TrackRadius.Millimetres * scale;
        var band = track.ShoulderDiameter.Millimetres * scale;
        var sign = PlanGeometry.Sign(track.Travel);
        var start = track.Start.Degrees;
        var turned = 40.0 * index;
        var sides = labelsAt + (34.0 * index);
        var tool = plan.Point(radius, start + (sign * (95 + turned)));
        var spin = new PlanGeometry(tool.X, tool.Y);
        var spinRadius = Math.Max(6, band * 0.28);
        var spinSign = PlanGeometry.Sign(track.Spindle);
        return new DrawnTrack
        {
            Source = track,
            Radius = radius,
            Band = band,
            Pin = Math.Max(3, (track.PinDiameter?.Millimetres ?? 0) * scale / 2),
            Start = start,
            OverlapDegrees = track.Overlap.Degrees,
            Sign = sign,
            ArrowAt = start + (sign * (70 + turned)),
            Exit = plan.Point(radius, start + (sign * track.Overlap.Degrees)),
            Tool = tool,
            OuterLabel = plan.Point(radius + (band / 2), sides),
            InnerLabel = plan.Point(radius - (band / 2), sides),
            NameLabel = plan.Point(radius, start - (sign * 900 / Math.Max(radius, 1))),
            Spin = spin.Arc(spinRadius, 0, 270 * spinSign),
            SpinHead = spin.ArrowHead(spinRadius, 280 * spinSign, track.Spindle, 8),
            Sentence = Describe(track, units),
        };
    }

    private static string Describe(PassTrack track, UnitSystem units)
    {
        var pin = track.PinDiameter is { } diameter ? $", pin {Show(diameter, units)}" : "";
        return $"Pass {track.Name}: radius {Show(track.TrackRadius, units)}, shoulder {Show(track.ShoulderDiameter, units)}{pin}; "
            + $"spindle {Sense(track.Spindle)}, travel {Sense(track.Travel)}; "
            + $"{Side(track.OuterSide)} side outside, {Side(track.InnerSide)} side inside; "
            + $"starts at {Show(track.Start, units)}, overlaps {Show(track.Overlap, units)}.";
    }

    private static string Side(WeldSide side) =>
        side == WeldSide.Advancing ? "advancing" : "retreating";

    private static string Sense(RotationSense sense) =>
        sense == RotationSense.Clockwise ? "clockwise" : "counter-clockwise";

    private static string Show<TQuantity>(TQuantity quantity, UnitSystem units)
        where TQuantity : struct, IQuantity<TQuantity> =>
        UnitText.Nominal(quantity, units).ToString();
}
