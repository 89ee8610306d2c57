using WeldTrace.Domain.Procedures;
using WeldTrace.Web.Features.Welding.OverlayRuns;

namespace WeldTrace.Web.Tests.Features.Welding.OverlayRuns;

/// <summary>Places worked by hand: the first run travels 10 mm/s from 5 s on, the second 5 mm/s from 0 s on. No published case.</summary>
public sealed class RunOverlayTests
{
    private static readonly OverlaidRun Fast = new(
        [new(5, 25, 8000, 8200), new(25, 25.01, 9500, 9600), new(25.02, 45, 7900, 8100)],
        [new(5, 0), new(45, 0.4)]
    );

    private static readonly OverlaidRun Slow = new(
        [new(0, 40, 7000, 7100)],
        [new(0, 0), new(40, 0.2)]
    );

    [Fact]
    public void Of_APeakOfOneRun_StandsAtItsPlaceOnTheSeam()
    {
        var (axis, columns) = RunOverlay.Of([Fast, Slow], 0, 0.4);

        var peak = columns[0].Index().MaxBy(c => c.Item).Index;
        Assert.Equal(9600, columns[0][peak]);
        // 20 s of travel at 10 mm/s.
        Assert.Equal(0.2, axis[peak], 0.4 / RunOverlay.Bins);
        Assert.Equal(7900, columns[0].Min());
    }

    [Fact]
    public void Of_WhereARunHasNotBeen_IsAGap()
    {
        var (axis, columns) = RunOverlay.Of([Fast, Slow], 0, 0.4);

        var end = columns[1].Index().Last(c => !double.IsNaN(c.Item)).Index;
        Assert.Equal(0.2, axis[end], 2 * 0.4 / RunOverlay.Bins);
        Assert.DoesNotContain(columns[0], double.IsNaN);
    }

    [Fact]
    public void Of_CloserThanItsSamples_RunsStraightBetweenThem()
    {
        var run = new OverlaidRun([new(0, 0, 1, 1), new(10, 10, 3, 3)], [new(0, 0), new(10, 0.1)]);

        var (axis, columns) = RunOverlay.Of([run], 0, 0.1001);

        var middle = axis.Index().MinBy(a => Math.Abs(a.Item - 0.05)).Index;
        Assert.Equal(2, columns[0][middle], 0.01);
    }

    [Fact]
    public void Read_WhatIsNoRunOrTooMany_IsLeftOut()
    {
        var ids = Enumerable
            .Range(0, 6)
            .Select(i => (string?)new Guid(i + 1, 0, 0, new byte[8]).ToString())
            .ToList();

        var query = OverlayQuery.Read("Torque", ["x", null, .. ids, ids[0]]);

        Assert.Equal(WeldParameter.Torque, query.Parameter);
        Assert.Equal(ids.Take(OverlayQuery.MostRuns), query.Runs.Select(r => r.ToString()));
        Assert.Equal(WeldParameter.AxialForce, OverlayQuery.Read("TiltAngle", null).Parameter);
    }
}
