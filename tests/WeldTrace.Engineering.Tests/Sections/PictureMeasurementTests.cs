using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Sections;
using WeldTrace.Engineering.Statistics;

namespace WeldTrace.Engineering.Tests.Sections;

/// <summary>
/// Values by plane geometry worked by hand: the triangle of 3, 4 and 5, rectangles, right angles. Uncertainties against a
/// simulation of pointing in the manner of JCGM 101:2008 (Monte Carlo), which shares no formula with the code.
/// </summary>
public sealed class PictureMeasurementTests
{
    private const int Trials = 40_000;

    [Fact]
    public void Line_OfThreeByFourHundredPixels_IsFiveHundredTimesTheScale()
    {
        var scale = PictureScale.OfPixel(2, 0, 0).Value;

        var line = PictureMeasurement.Line(scale, new(100, 100), new(400, 500));

        Assert.Equal(1.0, line.Value, 1e-12);
        Assert.Equal(0, line.ExpandedUncertainty);
    }

    [Fact]
    public void Scale_FromAKnownLength_IsLengthOverPixels()
    {
        var scale = PictureScale
            .OfKnownLength(
                new(0, 0),
                new(300, 400),
                Length.FromMillimetres(5),
                Length.FromMillimetres(0.005),
                0
            )
            .Value;

        Assert.Equal(10, scale.MicrometresPerPixel, 1e-12);
        Assert.Equal(0.001, scale.RelativeUncertainty, 1e-12);
    }

    [Theory]
    [InlineData(0, 5)]
    [InlineData(9, 5)]
    [InlineData(100, 0)]
    public void Scale_OfNothing_IsRefused(double pixels, double millimetres) =>
        Assert.True(
            PictureScale
                .OfKnownLength(
                    new(0, 0),
                    new(pixels, 0),
                    Length.FromMillimetres(millimetres),
                    Length.Zero,
                    1
                )
                .IsRefused
        );

    [Fact]
    public void Area_OfARectangle_IsWidthTimesHeight_AndItsExtentTheDiagonal()
    {
        var scale = PictureScale.OfPixel(10, 0, 0).Value;
        PicturePoint[] corners = [new(0, 0), new(300, 0), new(300, 400), new(0, 400)];

        Assert.Equal(12, PictureMeasurement.Area(scale, corners).Value, 1e-9);
        Assert.Equal(5, PictureMeasurement.Extent(scale, corners).Value, 1e-9);
    }

    [Theory]
    [InlineData(100, 0, 0, 100, 90)]
    [InlineData(100, 0, -100, 0, 180)]
    [InlineData(100, 0, 100, 100, 45)]
    public void Angle_OfKnownLegs_IsFound(
        double ax,
        double ay,
        double bx,
        double by,
        double degrees
    )
    {
        var scale = PictureScale.OfPixel(1, 0, 0).Value;

        var angle = PictureMeasurement.Angle(
            scale,
            new(500 + ax, 500 + ay),
            new(500, 500),
            new(500 + bx, 500 + by)
        );

        Assert.Equal(degrees, angle.Value, 1e-9);
    }

    [Fact]
    public void Uncertainty_OfPointing_IsThatOfASimulation()
    {
        var scale = PictureScale.OfPixel(10, 0, 2).Value;
        PicturePoint[] corners = [new(100, 100), new(420, 120), new(380, 410), new(90, 300)];

        AssertSpread(
            PictureMeasurement.Line(scale, corners[0], corners[1]),
            p => p[0].To(p[1]) / 100,
            corners
        );
        AssertSpread(PictureMeasurement.Area(scale, corners), p => Shoelace(p) / 10_000, corners);
        AssertSpread(
            PictureMeasurement.Angle(scale, corners[0], corners[1], corners[2]),
            p => DegreesAt(p[0], p[1], p[2]),
            corners
        );
    }

    [Fact]
    public void Face_DrawnUphill_TellsSideAndDepth()
    {
        var face = new FaceLine(new(0, 300), new(400, 0));

        Assert.Equal(500, face.Width(), 1e-9);
        Assert.Equal(0, face.FromMiddle(new(200, 150)), 1e-9);
        Assert.Equal(-250, face.FromMiddle(new(0, 300)), 1e-9);
        Assert.Equal(250, face.FromMiddle(new(400, 0)), 1e-9);
        Assert.Equal(100, face.FromFace(new(260, 230)), 1e-9);
    }

    private static void AssertSpread(
        PictureMeasurement measured,
        Func<PicturePoint[], double> again,
        PicturePoint[] points
    )
    {
        var random = new Random(20260302);
        var values = Enumerable
            .Range(0, Trials)
            .Select(_ => again([.. points.Select(p => Shaken(p, random))]))
            .ToList();
        var mean = values.Average();
        var deviation = Math.Sqrt(values.Average(v => (v - mean) * (v - mean)));

        Assert.Equal(
            1,
            StandardUncertainty.CoverageFactor * deviation / measured.ExpandedUncertainty,
            0.02
        );
    }

    private static PicturePoint Shaken(PicturePoint point, Random random) =>
        new(point.X + (2 * Normal(random)), point.Y + (2 * Normal(random)));

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()))
        * Math.Cos(2 * Math.PI * random.NextDouble());

    private static double Shoelace(PicturePoint[] p) =>
        Math.Abs(
            Enumerable
                .Range(0, p.Length)
                .Sum(i => (p[i].X * p[(i + 1) % p.Length].Y) - (p[(i + 1) % p.Length].X * p[i].Y))
        ) / 2;

    private static double DegreesAt(PicturePoint a, PicturePoint corner, PicturePoint b)
    {
        var (l, r) = (corner.To(a), corner.To(b));
        return Math.Acos(((l * l) + (r * r) - Math.Pow(a.To(b), 2)) / (2 * l * r)) * 180 / Math.PI;
    }
}
