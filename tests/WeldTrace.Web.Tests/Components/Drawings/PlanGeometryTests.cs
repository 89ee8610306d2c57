using System.Globalization;
using WeldTrace.Engineering.Paths;
using WeldTrace.Web.Components.Drawings;

namespace WeldTrace.Web.Tests.Components.Drawings;

// Hand-worked: 0° is the top, 90° clockwise the right; y runs downwards.
public sealed class PlanGeometryTests
{
    private static readonly PlanGeometry Plane = new(100, 100);

    [Theory]
    [InlineData(0, 100, 50)]
    [InlineData(90, 150, 100)]
    [InlineData(180, 100, 150)]
    [InlineData(-90, 50, 100)]
    public void Point_QuarterTurns_LieClockwiseFromTheTop(double degrees, double x, double y)
    {
        var point = Plane.Point(50, degrees);

        Assert.Equal(x, point.X, 9);
        Assert.Equal(y, point.Y, 9);
    }

    [Fact]
    public void Arc_QuarterClockwise_SweepsWithTheClock() =>
        Assert.Equal("M100 50 A50 50 0 0 1 150 100", Plane.Arc(50, 0, 90));

    [Fact]
    public void Arc_QuarterCounterClockwise_SweepsAgainstIt() =>
        Assert.Equal("M100 50 A50 50 0 0 0 50 100", Plane.Arc(50, 0, -90));

    [Fact]
    public void Arc_FullTurn_IsTwoHalvesBackToItsStart() =>
        Assert.Equal("M100 50 A50 50 0 0 1 100 150 A50 50 0 0 1 100 50", Plane.Arc(50, 0, 360));

    [Fact]
    public void Arc_MoreThanATurn_IsCutToOne() =>
        Assert.Equal(Plane.Arc(50, 0, 360), Plane.Arc(50, 0, 500));

    [Theory]
    [InlineData(RotationSense.Clockwise, true)]
    [InlineData(RotationSense.CounterClockwise, false)]
    public void ArrowHead_AtTheTop_PointsAlongTheTravel(RotationSense travel, bool tipIsRight)
    {
        var tip = Plane.ArrowHead(50, 0, travel, 10)[1..].Split(' ')[0];

        Assert.Equal(tipIsRight, double.Parse(tip, CultureInfo.InvariantCulture) > 100);
    }

    [Theory]
    [InlineData(38, 5, 10, 40)]
    [InlineData(318, 5, 100, 400)]
    [InlineData(0.7, 5, 0.2, 0.8)]
    [InlineData(100, 5, 20, 100)]
    public void NiceScale_AnyLargest_HasRoundStepsAndHoldsIt(
        double largest,
        int steps,
        double step,
        double top
    )
    {
        var scale = NiceScale.For(largest, steps);

        Assert.Equal(step, scale.Step, 9);
        Assert.Equal(top, scale.Top, 9);
        Assert.Equal(top, scale.Ticks.Last(), 9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void NiceScale_NothingToShow_IsOneStep(double largest) =>
        Assert.Equal([0.0, 1.0], NiceScale.For(largest).Ticks);
}
