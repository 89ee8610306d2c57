namespace WeldTrace.ProcessLogs.Tests;

// The dwell before travel: from 3 s to 5 s as the run is constructed.
public sealed partial class JudgementTests
{
    [Fact]
    public async Task Evaluate_Dwell_IsTheTimeFromDepthToTravel()
    {
        var found = await JudgeAsync(Plan(), (_, row) => row);

        Assert.Equal(2, Assert.Single(found.Dwells).Duration.TotalSeconds, 0.02);
    }

    [Fact]
    public async Task Evaluate_TravelAtOnce_IsADwellOfNothing()
    {
        var found = await JudgeAsync(
            Plan(),
            (at, row) => at is >= 3 and < 5 ? row with { Speed = 600 } : row
        );

        Assert.Equal(0, Assert.Single(found.Dwells).Duration.TotalSeconds, 0.02);
    }

    [Fact]
    public async Task Evaluate_DwellWithoutTravelSpeed_IsToldOnlyWhenStated()
    {
        var found = await JudgeAsync(Plan(), (_, row) => row, withSpeed: false);
        var stated = await JudgeAsync(
            Plan() with
            {
                Bounds = new StatedBounds(1, 3, 6.5, 10, 50, 55, 57),
            },
            (_, row) => row,
            withSpeed: false
        );

        Assert.Empty(found.Dwells);
        Assert.Equal(3.5, Assert.Single(stated.Dwells).Duration.TotalSeconds, 0.02);
    }
}
