using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.ToolLife;

namespace WeldTrace.Engineering.Tests.ToolLife;

public sealed class PlottingPositionTests
{
    /// <summary>Without censored tools: (i − 1/2)/n, Hazen 1914.</summary>
    [Fact]
    public void PlottingPositions_AllFailed_AreHazens()
    {
        var positions = SurvivalEstimate.PlottingPositions([
            Record(40, true),
            Record(10, true),
            Record(30, true),
            Record(20, true),
        ]);

        Assert.Equal([10, 20, 30, 40], positions.Select(p => p.At.Metres));
        Assert.Equal([0.125, 0.375, 0.625, 0.875], positions.Select(p => p.FailedPart), Near);
    }

    /// <summary>By hand: S = 4/5, then 4/5 · 2/3 = 8/15 after two censored; p = 1 − 0.9 = 0.1 and 1 − (0.8 + 8/15)/2 = 1/3.</summary>
    [Fact]
    public void PlottingPositions_Censored_GoHalfWayDownEachStep()
    {
        var positions = SurvivalEstimate.PlottingPositions([
            Record(10, true),
            Record(15, false),
            Record(20, true),
            Record(25, false),
            Record(30, false),
        ]);

        Assert.Equal([10, 20], positions.Select(p => p.At.Metres));
        Assert.Equal([0.1, 1.0 / 3], positions.Select(p => p.FailedPart), Near);
    }

    /// <summary>Two failures at one length are one step: S = 1/3, p = 1 − (1 + 1/3)/2 = 1/3.</summary>
    [Fact]
    public void PlottingPositions_EqualLengths_AreOneStep() =>
        Assert.Equal(
            1.0 / 3,
            Assert
                .Single(
                    SurvivalEstimate.PlottingPositions([
                        Record(10, true),
                        Record(10, true),
                        Record(20, false),
                    ])
                )
                .FailedPart,
            12
        );

    private static bool Near(double left, double right) => Math.Abs(left - right) < 1e-12;

    private static LifeRecord Record(double metres, bool failed) =>
        new(Length.FromMetres(metres), failed);
}
