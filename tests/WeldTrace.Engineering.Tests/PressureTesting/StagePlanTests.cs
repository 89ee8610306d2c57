using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.PressureTesting;

/// <summary>Rests on no published case: sums of pressure over rate, worked by hand; 200 bar at 20 bar/min take 10 min.</summary>
public sealed class StagePlanTests
{
    [Fact]
    public void Compute_ThreeStages_AddsChangesAndHolds()
    {
        var plan = StagePlan
            .Compute([
                Stage("operating", 200, 20, 5),
                Stage("proof", 300, 10, 10),
                Stage("release", 0, 50, 0),
            ])
            .Value;
        Assert.Equal([10, 25, 41], plan.Stages.Select(stage => stage.Reached.TotalMinutes));
        Assert.Equal([15, 35, 41], plan.Stages.Select(stage => stage.Ends.TotalMinutes));
        Assert.Equal(41, plan.Duration.TotalMinutes);
        Assert.Equal(300, plan.Highest.Bar, 1e-9);
        Assert.True(plan.ReturnsToZero);
        Assert.True(plan.Working.Validity.IsWithin);
    }

    [Fact]
    public void Compute_PressureLeft_SaysSo() =>
        Assert.False(StagePlan.Compute([Stage("operating", 200, 20, 5)]).Working.Validity.IsWithin);

    [Fact]
    public void Compute_ImpossibleStages_RefusesEach()
    {
        Assert.Equal(2, StagePlan.Compute([Stage("a", -1, 0, 5)]).Refusals.Count);
        Assert.Equal("stages", Assert.Single(StagePlan.Compute([]).Refusals).Where);
        Assert.Equal(
            "rate of 'a'",
            Assert.Single(StagePlan.Compute([Stage("a", 200, 1e-9, 5)]).Refusals).Where
        );
    }

    private static PressureStage Stage(string name, double bar, double rate, double minutes) =>
        new(name, Pressure.FromBar(bar), Pressure.FromBar(rate), TimeSpan.FromMinutes(minutes));
}
