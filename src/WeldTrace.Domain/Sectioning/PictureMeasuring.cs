using System.Globalization;
using WeldTrace.Domain.Limits;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Sections;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Sectioning;

/// <summary>Measures marks by the scale, and judges them.</summary>
public static class PictureMeasuring
{
    private const double FinestMillimetres = 0.001;

    /// <summary>What was measured; null for a point, which has no size.</summary>
    /// <param name="scale">Scale of the picture.</param>
    /// <param name="entry">Mark whose points were checked.</param>
    public static PictureMeasurement? Measure(PictureScale scale, MarkEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var points = entry.Points;
        return entry.Shape switch
        {
            PictureShape.Line => PictureMeasurement.Line(scale, points[0], points[1]),
            PictureShape.Angle => PictureMeasurement.Angle(scale, points[0], points[1], points[2]),
            PictureShape.Area => PictureMeasurement.Extent(scale, points),
            PictureShape.Point => null,
            _ => throw new ArgumentOutOfRangeException(
                nameof(entry),
                entry.Shape,
                "Unknown shape."
            ),
        };
    }

    internal static MarkResult Result(
        PictureScale scale,
        FaceLine face,
        MarkEntry entry,
        AppliedLimit? limit
    )
    {
        var measured = Measure(scale, entry);
        var (size, uncertainty) = measured is null
            ? (null, null)
            : (
                Round(measured.Value, measured.Unit),
                RoundUp(measured.ExpandedUncertainty, measured.Unit)
            );
        var area =
            entry.Shape == PictureShape.Area
                ? Round(PictureMeasurement.Area(scale, entry.Points).Value, "mm²")
                : null;
        var fromMiddle = scale.Millimetres(entry.Points.Average(face.FromMiddle));
        var (verdict, sentence) = limit is null
            ? ((Verdict?)null, "")
            : ImperfectionJudgement.Judge(size, uncertainty, limit);
        return new MarkResult(
            size,
            uncertainty,
            area,
            SideOf([.. entry.Points.Select(face.FromMiddle)], scale),
            Round(fromMiddle, "mm"),
            Round(scale.Millimetres(entry.Points.Min(face.FromFace)), "mm"),
            limit,
            verdict,
            sentence
        );
    }

    // What reaches over the middle, or lies nearer to it than a person can point, is on neither side.
    private static WeldSide? SideOf(double[] fromMiddle, PictureScale scale) =>
        fromMiddle.Max() < -2 * scale.PointingPixels ? WeldSide.Advancing
        : fromMiddle.Min() > 2 * scale.PointingPixels ? WeldSide.Retreating
        : null;

    private static Measured Round(double value, string unit) => new(Digits(value), unit);

    private static Measured RoundUp(double value, string unit) =>
        new(
            Digits(
                Math.Max(0, Math.Ceiling((value / FinestMillimetres) - 1e-9)) * FinestMillimetres
            ),
            unit
        );

    // Adding zero takes the sign from a negative zero.
    private static string Digits(double value) =>
        (Math.Round(value, 3) + 0.0).ToString("0.000", CultureInfo.InvariantCulture);
}
