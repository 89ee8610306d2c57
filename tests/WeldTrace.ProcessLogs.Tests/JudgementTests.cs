using System.Globalization;
using System.Text;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Tests;

/// <summary>
/// A constructed run of 60 s at 100 samples a second: contact at 1 s, at depth at 3 s, travel at 10 mm/s from 5 s to 55 s, free at 57 s.
/// Whatever is expected follows from how it was constructed.
/// </summary>
public sealed partial class JudgementTests
{
    private const int Rows = 6000;

    [Fact]
    public async Task Evaluate_WarningWithinTheWindow_IsToldAsWarning()
    {
        var plan = Plan(
            new ChannelWindow(LogChannel.AxialForce, 7_000, 9_000, "N"),
            new ChannelWindow(LogChannel.AxialForce, 7_500, 8_500, "N") { IsWarning = true }
        );

        var found = await JudgeAsync(
            plan,
            (at, row) => at is >= 20 and < 22 ? row with { Force = 8.7 } : row
        );

        var warning = Assert.Single(found.Excursions);
        Assert.True(warning.IsWarning);
        Assert.Equal((20, 22), (warning.StartSeconds, warning.EndSeconds));
    }

    [Fact]
    public async Task Evaluate_WindowOfTheDwell_HoldsInTheDwellOnly()
    {
        var plan = Plan(
            new ChannelWindow(LogChannel.AxialForce, 5_000, 7_000, "N") { Phase = WeldPhase.Dwell }
        );

        var found = await JudgeAsync(plan, (_, row) => row);

        var excursion = Assert.Single(found.Excursions);
        Assert.Equal(WeldPhase.Dwell, excursion.Phase);
        Assert.InRange(excursion.StartSeconds, 2.9, 3.1);
        Assert.InRange(excursion.EndSeconds, 4.9, 5.1);
    }

    [Fact]
    public async Task Evaluate_ShortInTimeButLongOnTheSeam_CountsByItsLength()
    {
        var plan = Plan(new ChannelWindow(LogChannel.AxialForce, 7_000, 9_000, "N"));
        static Row Burst(double at, Row row) =>
            at is >= 20 and < 20.3 ? row with { Force = 9.5 } : row;

        var byTime = await JudgeAsync(plan, Burst);
        var byLength = await JudgeAsync(
            plan with
            {
                DebounceLength = Length.FromMillimetres(2.5),
            },
            Burst
        );
        var tooShort = await JudgeAsync(
            plan with
            {
                DebounceLength = Length.FromMillimetres(3.5),
            },
            Burst
        );

        Assert.Empty(byTime.Excursions);
        Assert.Equal(3, Assert.Single(byLength.Excursions).LengthAlongSeam.Millimetres, 2);
        Assert.Empty(tooShort.Excursions);
    }

    [Fact]
    public async Task Evaluate_StatedBounds_JudgesByThem()
    {
        var plan = Plan(new ChannelWindow(LogChannel.AxialForce, 7_000, 9_000, "N")) with
        {
            Bounds = new StatedBounds(1, 3, 5, 10, 50, 55, 57),
        };

        var found = await JudgeAsync(
            plan,
            (at, row) => at is >= 6 and < 8 or >= 20 and < 22 ? row with { Force = 9.5 } : row
        );

        Assert.Equal(20, Assert.Single(found.Excursions).StartSeconds);
        var steady = Assert.Single(found.Steady);
        Assert.Equal((10, 50), (steady.FromSeconds, steady.ToSeconds));
        Assert.Equal(500, found.Travelled.Millimetres, 1);
    }

    [Fact]
    public async Task Evaluate_CoordinatesInsteadOfSpeed_GiveThePath()
    {
        var found = await JudgeAsync(Plan(), (_, row) => row, withSpeed: false);

        Assert.Equal(SeamPositionSource.Coordinates, found.PositionSource);
        Assert.Equal(500, found.Travelled.Millimetres, 0);
    }

    [Fact]
    public async Task Evaluate_SpeedThatReadsTooHigh_DoesNotClose()
    {
        var found = await JudgeAsync(Plan(), (_, row) => row with { Speed = row.Speed * 1.05 });

        Assert.Equal(SeamPositionSource.Coordinates, found.Closure!.Source);
        Assert.Equal(25, found.Closure.Difference.Millimetres, 0);
    }

    [Fact]
    public async Task Evaluate_OnACircle_TellsWhenItWasWeldedRound()
    {
        var radius = Length.FromMillimetres(400 / (2 * Math.PI));
        var plan = Plan() with
        {
            Track = new CircularTrack(radius, Angle.Zero, RotationSense.CounterClockwise),
        };

        var found = await JudgeAsync(plan, (_, row) => row);

        Assert.Equal(45, found.OverlapSeconds!.Value, 1);
    }

    [Fact]
    public async Task Evaluate_ForceWithKnownLines_ShowsThem()
    {
        // 600 rev/min is 10 Hz; 0.4 at it and 0.2 at 2 Hz: low band over line is one half.
        var found = await JudgeAsync(
            Plan(),
            (at, row) =>
                row with
                {
                    Force =
                        row.Force
                        + (0.4 * Math.Sin(2 * Math.PI * 10 * at))
                        + (0.2 * Math.Sin(2 * Math.PI * 2 * at)),
                }
        );

        var force = found.Signatures.Single(s => s.Channel == LogChannel.AxialForce);
        Assert.Equal(10, force.Line!.Hertz, 6);
        Assert.Equal(400, force.Line.Amplitude, 4.0);
        Assert.Equal(0.5, force.Line.LowBandRatio!.Value, 0.02);
    }

    [Fact]
    public async Task Evaluate_ForceThatRisesInEveryPhase_TellsItPhaseByPhase()
    {
        // Once round is 400 mm of 500: the overlap lasts from 45 s to 55 s. The force rises by 10 N each second from contact on.
        var plan = Plan() with
        {
            Track = new CircularTrack(
                Length.FromMillimetres(400 / (2 * Math.PI)),
                Angle.Zero,
                RotationSense.CounterClockwise
            ),
        };

        var found = await JudgeAsync(
            plan,
            (at, row) => row.Force > 0 ? row with { Force = 8 + ((at - 1) * 0.01) } : row
        );

        Assert.Equal(
            [.. Enum.GetValues<TradePhase>().Where(p => p != TradePhase.Ramp)],
            found.PhaseFigures.Select(f => f.Phase).Where(p => p != TradePhase.Ramp)
        );
        foreach (
            var (phase, from, to) in new[]
            {
                (TradePhase.Plunge, 1.0, 3.0),
                (TradePhase.Dwell, 3, 5),
                (TradePhase.Overlap, 45, 55),
                (TradePhase.Exit, 55, 57),
            }
        )
        {
            var figures = found.PhaseFigures.Single(f => f.Phase == phase);
            var force = figures.Columns.Single(c => c.Channel == LogChannel.AxialForce);
            var middle = 8000 + (10 * (((from + to) / 2) - 1));
            Assert.Equal(to - from, figures.Seconds, 0.15);
            Assert.Equal(middle, force.MeanSi, 1.5);
            Assert.Equal(middle, force.MedianSi!.Value, 2.5);
            Assert.Equal(10 * (to - from), force.DriftSi!.Value, 1.5);
            // The means of the first and last tenth lie nine tenths of the phase apart.
            Assert.Equal(9 * (to - from), force.ChangeSi!.Value, 1.5);
        }

        var traverse = found.PhaseFigures.Single(f => f.Phase == TradePhase.Traverse);
        Assert.Equal(400, traverse.Path.Millimetres, 5.0);
        Assert.Equal(
            found
                .Statistics.Single(s => s is { IsSteady: true, Channel: LogChannel.AxialForce })
                .Count,
            traverse.Columns.Single(c => c.Channel == LogChannel.AxialForce).Count
                + found
                    .PhaseFigures.Single(f => f.Phase == TradePhase.Overlap)
                    .Columns.Single(c => c.Channel == LogChannel.AxialForce)
                    .Count,
            60.0
        );
    }

    private static EvaluationPlan Plan(params IReadOnlyList<ChannelWindow> windows) =>
        new() { Windows = windows, ProgrammedSpeed = Speed.FromMillimetresPerMinute(600) };

    private static async Task<LogEvaluation> JudgeAsync(
        EvaluationPlan plan,
        Func<double, Row, Row> change,
        bool withSpeed = true
    )
    {
        var csv = new StringBuilder("t [s],Fz [kN],z [mm],n [rpm],x [mm],y [mm]");
        csv.Append(withSpeed ? ",v [mm/min]\n" : "\n");
        for (var i = 0; i < Rows; i++)
        {
            var at = i / 100.0;
            var row = change(at, At(at));
            csv.Append(
                CultureInfo.InvariantCulture,
                $"{at:F2},{row.Force:F4},{row.Depth:F3},600,{row.X:F3},0.000"
            );
            csv.Append(CultureInfo.InvariantCulture, $"{(withSpeed ? $",{row.Speed:F1}" : "")}\n");
        }

        List<ColumnMapping> columns =
        [
            new("t [s]", LogChannel.Time, "s"),
            new("Fz [kN]", LogChannel.AxialForce, "kN"),
            new("z [mm]", LogChannel.PlungeDepth, "mm"),
            new("n [rpm]", LogChannel.SpindleSpeed, "rpm"),
            new("x [mm]", LogChannel.X, "mm"),
            new("y [mm]", LogChannel.Y, "mm"),
        ];
        if (withSpeed)
        {
            columns.Add(new("v [mm/min]", LogChannel.TravelSpeed, "mm/min"));
        }

        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(csv.ToString()));
        var read = await ProcessLogReader.ReadAsync(
            stream,
            new LogMapping(columns),
            null,
            TestContext.Current.CancellationToken
        );
        return LogEvaluation.Evaluate(read.Log!, plan);
    }

    private static Row At(double at)
    {
        var isDown = at is >= 1 and < 57;
        var isTravelling = at is >= 5 and < 55;
        return new Row(
            isDown ? 8 : 0,
            at < 1 ? -1
                : at < 3 ? (at - 1) * 2.5
                : at < 55 ? 5
                : Math.Max(-1, 5 - ((at - 55) * 2.5)),
            10 * Math.Clamp(at - 5, 0, 50),
            isTravelling ? 600 : 0
        );
    }

    private readonly record struct Row(double Force, double Depth, double X, double Speed);
}
