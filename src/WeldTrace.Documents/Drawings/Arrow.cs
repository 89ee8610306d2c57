using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Drawings;

/// <summary>Arrows along circles.</summary>
internal static class Arrow
{
    /// <summary>An arc that ends in an arrow head; the sweep is positive clockwise.</summary>
    public static void Along(
        Surface surface,
        Spot centre,
        double radius,
        double fromDegrees,
        double sweepDegrees,
        double weight
    )
    {
        var head = 2.2 + (2.4 * weight);
        var headDegrees = Math.Min(head / radius * 180 / Math.PI, Math.Abs(sweepDegrees) * 0.6);
        var sense = Math.Sign(sweepDegrees);
        var shaft = sweepDegrees - (sense * headDegrees * 0.8);
        surface.Arc(centre, radius, fromDegrees, shaft, weight);
        var tip = centre.Polar(radius, fromDegrees + sweepDegrees);
        var foot = fromDegrees + sweepDegrees - (sense * headDegrees);
        surface.Polygon(
            Tone.Ink,
            tip,
            centre.Polar(radius + (head * 0.42), foot),
            centre.Polar(radius - (head * 0.42), foot)
        );
    }
}
