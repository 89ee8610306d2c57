using static WeldTrace.Engineering.Statistics.StandardUncertainty;

namespace WeldTrace.Engineering.Sections;

/// <summary>What was measured on a picture, with its expanded uncertainty, k = 2.</summary>
/// <param name="Value">Value in the unit.</param>
/// <param name="ExpandedUncertainty">Expanded uncertainty, k = 2, in the same unit.</param>
/// <param name="Unit"><c>mm</c>, <c>mm²</c> or <c>°</c>.</param>
/// <param name="Working">How it was worked out.</param>
public sealed record PictureMeasurement(
    double Value,
    double ExpandedUncertainty,
    string Unit,
    Working Working
) : IWorked
{
    private const string Source = "Plane geometry; propagation of uncertainty by the GUM, k = 2.";

    /// <summary>Length of a line.</summary>
    /// <param name="scale">Scale of the picture.</param>
    /// <param name="from">One end.</param>
    /// <param name="to">Other end.</param>
    public static PictureMeasurement Line(PictureScale scale, PicturePoint from, PicturePoint to)
    {
        ArgumentNullException.ThrowIfNull(scale);
        var pixels = from.To(to);
        var length = scale.Millimetres(pixels);
        var expanded =
            CoverageFactor
            * Combine(
                length * scale.RelativeUncertainty,
                scale.Millimetres(double.Sqrt(2) * scale.PointingPixels)
            );
        return new(
            length,
            expanded,
            "mm",
            Begin("Length on the picture", "L = s·d; U = 2·√((L·u_s/s)² + 2·(s·u_p)²)", scale)
                .Step("d", "length on the picture, pixels", pixels)
                .Result("L", "length", length, "mm")
                .Result("U", "expanded uncertainty", expanded, "mm")
                .From(Source)
                .Build()
        );
    }

    /// <summary>Greatest extent of an outline: the longest line between two of its corners.</summary>
    /// <param name="scale">Scale of the picture.</param>
    /// <param name="corners">Corners; two or more.</param>
    public static PictureMeasurement Extent(PictureScale scale, IReadOnlyList<PicturePoint> corners)
    {
        ArgumentNullException.ThrowIfNull(corners);
        ArgumentOutOfRangeException.ThrowIfLessThan(corners.Count, 2, nameof(corners));
        var (from, to) = corners
            .SelectMany((first, i) => corners.Skip(i + 1).Select(second => (first, second)))
            .MaxBy(pair => pair.first.To(pair.second));
        return Line(scale, from, to);
    }

    /// <summary>Area inside an outline whose corners are given in order.</summary>
    /// <param name="scale">Scale of the picture.</param>
    /// <param name="corners">Corners in order; three or more.</param>
    public static PictureMeasurement Area(PictureScale scale, IReadOnlyList<PicturePoint> corners)
    {
        ArgumentNullException.ThrowIfNull(scale);
        ArgumentNullException.ThrowIfNull(corners);
        ArgumentOutOfRangeException.ThrowIfLessThan(corners.Count, 3, nameof(corners));
        var (twice, spread) = (0.0, 0.0);
        for (var i = 0; i < corners.Count; i++)
        {
            var (before, next) = (
                corners[(i + corners.Count - 1) % corners.Count],
                corners[(i + 1) % corners.Count]
            );
            twice += (corners[i].X * next.Y) - (next.X * corners[i].Y);
            spread += Math.Pow(before.To(next) / 2, 2);
        }

        var pixels = double.Abs(twice) / 2;
        var unit = scale.Millimetres(1);
        var area = pixels * unit * unit;
        var pointed = double.Sqrt(spread) * scale.PointingPixels * unit * unit;
        var expanded = CoverageFactor * Combine(2 * area * scale.RelativeUncertainty, pointed);
        return new(
            area,
            expanded,
            "mm²",
            Begin(
                    "Area on the picture",
                    "A = s²·½·|Σ(x_i·y_j − x_j·y_i)|; U = 2·√((2·A·u_s/s)² + (s²·u_p)²·Σ(d_i/2)²)",
                    scale
                )
                .Step("a", "area on the picture, square pixels", pixels)
                .Result("A", "area", area, "mm²")
                .Result("U", "expanded uncertainty", expanded, "mm²")
                .From(Source)
                .Build()
        );
    }

    /// <summary>Angle between two legs, 0° to 180°.</summary>
    /// <param name="scale">Scale of the picture; an angle needs only its pointing.</param>
    /// <param name="first">End of one leg.</param>
    /// <param name="corner">Where the legs meet.</param>
    /// <param name="second">End of the other leg.</param>
    public static PictureMeasurement Angle(
        PictureScale scale,
        PicturePoint first,
        PicturePoint corner,
        PicturePoint second
    )
    {
        ArgumentNullException.ThrowIfNull(scale);
        var (ax, ay) = (first.X - corner.X, first.Y - corner.Y);
        var (bx, by) = (second.X - corner.X, second.Y - corner.Y);
        var (a2, b2) = ((ax * ax) + (ay * ay), (bx * bx) + (by * by));
        var radians = double.Abs(double.Atan2((ax * by) - (ay * bx), (ax * bx) + (ay * by)));
        // Gradients across the legs; that of the corner is minus their sum.
        var (gax, gay) = (ay / a2, -ax / a2);
        var (gbx, gby) = (-by / b2, bx / b2);
        var spread = Combine(gax, gay, gbx, gby, gax + gbx, gay + gby);
        const double Degrees = 180 / Math.PI;
        var (angle, expanded) = (
            radians * Degrees,
            CoverageFactor * spread * scale.PointingPixels * Degrees
        );
        return new(
            angle,
            expanded,
            "°",
            Working
                .Of("Angle on the picture", "α = |atan2(a × b, a·b)|; U = 2·u_p·√(Σ(∂α/∂x)²)")
                .Input("u_p", "standard uncertainty of pointing, pixels", scale.PointingPixels)
                .Step("a", "length of the first leg, pixels", double.Sqrt(a2))
                .Step("b", "length of the second leg, pixels", double.Sqrt(b2))
                .Result("α", "angle", angle, "°")
                .Result("U", "expanded uncertainty", expanded, "°")
                .From(Source)
                .Build()
        );
    }

    private static WorkingBuilder Begin(string title, string formula, PictureScale scale) =>
        Working
            .Of(title, formula)
            .Input("s", "length of a pixel", scale.MicrometresPerPixel, "µm")
            .Input("u_s/s", "its relative standard uncertainty", scale.RelativeUncertainty)
            .Input("u_p", "standard uncertainty of pointing, pixels", scale.PointingPixels);
}
