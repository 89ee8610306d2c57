using System.Globalization;
using System.Text;

namespace WeldTrace.ProcessLogs.Tests;

/// <summary>Faults put into a constructed log of 100 samples per second are told with their rows, and a sound log is told nothing of.</summary>
public sealed class ObservationTests
{
    private const int Rows = 6000;

    [Fact]
    public async Task Evaluate_SoundLog_ObservesNothing() =>
        Assert.Empty(await ObserveAsync(_ => { }));

    [Fact]
    public async Task Evaluate_Gap_IsToldBetweenItsRows()
    {
        var seen = Assert.Single(
            await ObserveAsync(rows =>
            {
                for (var i = 3000; i < Rows; i++)
                {
                    rows[i] = rows[i] with { Time = rows[i].Time + 1.5 };
                }
            })
        );

        Assert.Equal(
            (LogObservationKind.Gap, 3000, 3001),
            (seen.Kind, seen.FirstRow, seen.LastRow)
        );
        Assert.Contains("1.51 s", seen.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Evaluate_ChangedRate_IsTold()
    {
        var seen = Assert.Single(
            await ObserveAsync(rows =>
            {
                for (var i = 4000; i < Rows; i++)
                {
                    rows[i] = rows[i] with { Time = 40 + ((i - 4000) * 0.02) };
                }
            })
        );

        Assert.Equal(LogObservationKind.RateChange, seen.Kind);
        Assert.InRange(seen.FirstRow, 3936, 4064);
        Assert.InRange(seen.LastRow, Rows - 64, Rows + 64);
    }

    [Fact]
    public async Task Evaluate_StuckSensor_IsToldWithItsRows()
    {
        var seen = Assert.Single(
            await ObserveAsync(rows =>
            {
                for (var i = 2000; i < 2200; i++)
                {
                    rows[i] = rows[i] with { Force = 8.123 };
                }
            })
        );

        Assert.Equal(
            (LogObservationKind.Stuck, "Fz [kN]", 2001, 2200),
            (seen.Kind, seen.Column, seen.FirstRow, seen.LastRow)
        );
    }

    [Fact]
    public async Task Evaluate_SaturatedSensor_IsToldWithItsRows()
    {
        var seen = Assert.Single(
            await ObserveAsync(rows =>
            {
                for (var i = 2500; i < 2512; i++)
                {
                    rows[i] = rows[i] with { Force = 10 };
                }
            })
        );

        Assert.Equal(
            (LogObservationKind.Saturated, "Fz [kN]", 2501, 2512),
            (seen.Kind, seen.Column, seen.FirstRow, seen.LastRow)
        );
    }

    [Fact]
    public async Task Evaluate_BlockWrittenTwice_IsToldWithTheDistance()
    {
        var seen = Assert.Single(
            await ObserveAsync(rows =>
            {
                for (var i = 3000; i < 4000; i++)
                {
                    rows[i] = rows[i - 1000] with { Time = rows[i].Time };
                }
            })
        );

        Assert.Equal(LogObservationKind.Repeated, seen.Kind);
        Assert.Contains("1000 rows before", seen.Sentence, StringComparison.Ordinal);
        Assert.InRange(seen.FirstRow, 3001, 3150);
        Assert.InRange(seen.LastRow, 3850, 4000);
    }

    /// <summary>The slope of R's <c>lm</c> of a straight line is that line's; noise is symmetric about it.</summary>
    [Fact]
    public async Task Evaluate_RisingForce_DriftIsItsRise()
    {
        var evaluation = await EvaluateAsync(rows =>
        {
            for (var i = 0; i < Rows; i++)
            {
                rows[i] = rows[i] with { Force = 8 + (i * 0.0001) };
            }
        });
        var steady = evaluation.Statistics.Single(s =>
            s.IsSteady && s.Channel == LogChannel.AxialForce
        );

        Assert.Equal((steady.Count - 1) * 0.1, steady.DriftSi!.Value, 6);
        Assert.Equal(60, evaluation.SeamPoints.Count, 1.0);
        Assert.Equal(evaluation.Travelled, evaluation.SeamPoints[^1].Position);
    }

    private static async Task<IReadOnlyList<LogObservation>> ObserveAsync(Action<Row[]> spoil) =>
        (await EvaluateAsync(spoil)).Observations;

    private static async Task<LogEvaluation> EvaluateAsync(Action<Row[]> spoil)
    {
        var random = new Random(7);
        var rows = new Row[Rows];
        for (var i = 0; i < Rows; i++)
        {
            rows[i] = new Row(
                i * 0.01,
                8 + (random.NextDouble() * 0.5),
                200 + (random.NextDouble() * 2),
                3 + (random.NextDouble() * 0.001)
            );
        }

        spoil(rows);
        var text = new StringBuilder("t [s],Fz [kN],feed [mm/min],z [mm]\n");
        foreach (var row in rows)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{row.Time:F3},{row.Force:F4},{row.Feed:F3},{-row.Depth:F5}\n"
            );
        }

        var log = await SmallLog.ReadWholeAsync(text.ToString());
        return LogEvaluation.Evaluate(log, new EvaluationPlan());
    }

    private sealed record Row(double Time, double Force, double Feed, double Depth);
}
