using CsCheck;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.Paths;

public sealed class CircularPassLayoutTests
{
    [Fact]
    public void Compute_SeveralWrongInputs_RefusesWithEachOfThem()
    {
        var result = CircularPassLayout.Compute(
            Passes.Usual with
            {
                TrackRadius = Length.Zero,
                TravelSpeed = Speed.FromMillimetresPerMinute(-1),
                OverlapAngle = Angle.FromDegrees(400),
                PinDiameter = Length.FromMillimetres(20),
            }
        );
        Assert.True(result.IsRefused);
        Assert.Equal(
            ["track radius", "overlap angle", "travel speed", "pin diameter"],
            result.Refusals.Select(refusal => refusal.Where)
        );
        Assert.Throws<InvalidOperationException>(() => result.Value);
    }

    [Fact]
    public void Compute_SpeedOfAlmostNothing_RefusesInsteadOfOverflowing()
    {
        var result = CircularPassLayout.Compute(
            Passes.Usual with
            {
                TravelSpeed = Speed.FromMetresPerSecond(1e-20),
            }
        );
        Assert.Equal("speeds", Assert.Single(result.Refusals).Where);
    }

    [Fact]
    public void Compute_RampsLongerThanThePath_Refuses()
    {
        var result = CircularPassLayout.Compute(
            Passes.Usual with
            {
                RampUp = TimeSpan.FromMinutes(10),
            }
        );
        Assert.Equal("ramp times", Assert.Single(result.Refusals).Where);
    }

    [Theory]
    [InlineData(10, false, null)]
    [InlineData(471.2, false, null)]
    [InlineData(480, true, 8.761102)]
    [InlineData(9999, true, 26.179939)]
    public void PositionAt_Distance_KnowsTheOverlap(
        double distance,
        bool isInOverlap,
        double? weldedBeforeAt
    )
    {
        var place = Passes.Layout(Passes.Usual).PositionAt(Length.FromMillimetres(distance));
        Assert.Equal(isInOverlap, place.IsInOverlap);
        Assert.Equal(weldedBeforeAt ?? 0, place.OverlapsAt?.Millimetres ?? 0, 1e-5);
    }

    [Fact]
    public void PositionAfter_WithRamps_RunsFromStartToEndWithoutSteps()
    {
        var layout = Passes.Layout(
            Passes.Usual with
            {
                RampUp = TimeSpan.FromSeconds(3),
                RampDown = TimeSpan.FromSeconds(2),
            }
        );
        var fullTime = layout.TraverseTime.TotalSeconds;
        Gen.Double[-1, fullTime + 1]
            .Sample(time =>
            {
                var here = layout.PositionAfter(TimeSpan.FromSeconds(time));
                var next = layout.PositionAfter(TimeSpan.FromSeconds(time + 0.01));
                var step = next.Distance.Millimetres - here.Distance.Millimetres;
                Assert.InRange(step, 0, 0.01 * 200 / 60.0 * 1.001);
            });
        Assert.Equal(5, layout.PositionAfter(TimeSpan.FromSeconds(3)).Distance.Millimetres, 1e-6);
        Assert.Equal(0, layout.PositionAfter(layout.TraverseTime).Remaining.Millimetres, 1e-6);
    }

    [Fact]
    public void SideAt_BothEdges_AreDifferentSides()
    {
        var layout = Passes.Layout(Passes.Usual);
        Assert.Equal(WeldSide.Advancing, layout.SideAt(CircleEdge.Outer));
        Assert.Equal(WeldSide.Retreating, layout.SideAt(CircleEdge.Inner));
        Assert.Equal(20, layout.ExitHoleAngle.Degrees, 1e-9);
    }

    [Fact]
    public void Working_ShoulderOverCentre_IsOutsideItsRange()
    {
        var layout = Passes.Layout(Passes.Usual with { TrackRadius = Length.FromMillimetres(8) });
        Assert.False(layout.Working.Validity.IsWithin);
        Assert.True(layout.FeedAtInnerEdge.MetresPerSecond < 0);
        Assert.True(Passes.Layout(Passes.Usual).Working.Validity.IsWithin);
    }

    [Fact]
    public void Working_Results_AreThoseOfTheLayout()
    {
        var layout = Passes.Layout(Passes.Usual);
        var length = layout.Working.Results.Single(value => value.Symbol == "L");
        Assert.Equal("497.419 mm", length.Text);
        Assert.Equal(layout.PathLength.Millimetres, length.Value);
    }
}
