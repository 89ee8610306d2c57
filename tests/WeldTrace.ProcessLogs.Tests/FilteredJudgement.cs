using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Tests;

// Channels that are judged after a filter.
public sealed partial class JudgementTests
{
    /// <summary>A spike of one sample is outside as logged; a median of three passes over it, and a mean of five draws it down to 8.3 kN.</summary>
    [Theory]
    [InlineData(null, 0, 1)]
    [InlineData(SampleFilterKind.MovingMedian, 3, 0)]
    [InlineData(SampleFilterKind.MovingMean, 5, 0)]
    public async Task Evaluate_SingleSpike_IsJudgedAfterTheFilter(
        SampleFilterKind? kind,
        int samples,
        int excursions
    )
    {
        var plan = Filtered(kind, samples) with { Debounce = TimeSpan.Zero };

        var found = await JudgeAsync(
            plan,
            (at, row) => at is >= 20 and < 20.005 ? row with { Force = 9.5 } : row
        );

        Assert.Equal(excursions, found.Excursions.Count);
        Assert.Equal(kind is null ? 0 : 1, found.Filters.Count);
        var force = Assert.Single(
            found.Statistics,
            s => s is { IsSteady: true, Channel: LogChannel.AxialForce }
        );
        Assert.Equal(9_500, force.MaximumSi, 1e-6);
    }

    /// <summary>A median of 21 samples at 100 a second shows a step once 11 of them lie behind it: 0.1 s later.</summary>
    [Fact]
    public async Task Evaluate_StepAfterAMedian_BeginsAndEndsLaterByHalfItsLength()
    {
        var found = await JudgeAsync(
            Filtered(SampleFilterKind.MovingMedian, 21),
            (at, row) => at is >= 20 and < 22 ? row with { Force = 9.5 } : row
        );

        var excursion = Assert.Single(found.Excursions);
        Assert.Equal(20.1, excursion.StartSeconds, 1e-6);
        Assert.Equal(22.1, excursion.EndSeconds, 1e-6);
        Assert.Equal(9_500, excursion.ExtremeSi, 1e-6);
    }

    [Theory]
    [InlineData(8000.05, 0)]
    [InlineData(8000.03, 1)]
    public async Task Evaluate_MeanBetweenTwoDigits_IsJudgedByTheLimitItself(
        double upper,
        int excursions
    )
    {
        // Logged in steps of 0.1 N: two of any five samples are one step higher, so each mean of five is 8000.04 N.
        var plan = Filtered(SampleFilterKind.MovingMean, 5) with
        {
            Windows = [new ChannelWindow(LogChannel.AxialForce, 7_000, upper, "N")],
        };

        var found = await JudgeAsync(
            plan,
            (at, row) =>
                row.Force > 0 && (int)Math.Round(at * 100) % 5 < 2
                    ? row with
                    {
                        Force = 8.0001,
                    }
                    : row
        );

        Assert.Equal(excursions, found.Excursions.Count);
    }

    private static EvaluationPlan Filtered(SampleFilterKind? kind, int samples)
    {
        var plan = Plan(new ChannelWindow(LogChannel.AxialForce, 7_000, 9_000, "N"));
        return kind is { } filter
            ? plan with
            {
                Filters = new Dictionary<LogChannel, SampleFilter>
                {
                    [LogChannel.AxialForce] = new(filter, samples),
                },
            }
            : plan;
    }
}
