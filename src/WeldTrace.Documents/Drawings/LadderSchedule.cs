using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;
using PressureStage = WeldTrace.Domain.VesselDesigns.PressureStage;

namespace WeldTrace.Documents.Drawings;

/// <summary>
/// Lays a ladder out over time: each change takes as long as the greatest rise within a minute allows, two minutes where the design sets none.
/// </summary>
public static class LadderSchedule
{
    private static readonly TimeSpan UsualChange = TimeSpan.FromMinutes(2);

    /// <summary>Readings taken from a log are rounded; they may lie this much above their sample.</summary>
    private const double RoundedBar = 1e-3;

    private static readonly TimeSpan ShortestStage = TimeSpan.FromMinutes(1);

    /// <summary>The ladder that every vessel of a design goes through, and the burst of samples.</summary>
    /// <param name="plan">Pressures of the design.</param>
    public static PressureLadderPlot Of(PressurePlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Of(plan, plan.Stages, [], Nothing);
    }

    /// <summary>The stages of a test with what was read in those that are done.</summary>
    /// <param name="plan">Pressures of the design.</param>
    /// <param name="test">Test.</param>
    /// <param name="traces">Logged samples of each stage that has a logger file, by its place from 0.</param>
    public static PressureLadderPlot Of(
        PressurePlan plan,
        PressureTest test,
        IReadOnlyDictionary<int, IReadOnlyList<TraceSample>>? traces = null
    )
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(test);
        return Of(plan, test.Ladder(plan), test.Stages, traces ?? Nothing);
    }

    private static readonly Dictionary<int, IReadOnlyList<TraceSample>> Nothing = [];

    private static PressureLadderPlot Of(
        PressurePlan plan,
        IReadOnlyList<PressureStage> ladder,
        IReadOnlyList<StageResult> done,
        IReadOnlyDictionary<int, IReadOnlyList<TraceSample>> traces
    )
    {
        List<LadderStage> stages = [];
        List<LadderReading> readings = [];
        List<IReadOnlyList<LadderReading>> drawn = [];
        var (at, level) = (TimeSpan.Zero, Pressure.Zero);
        for (var i = 0; i < ladder.Count; i++)
        {
            var (stage, target) = (ladder[i], plan.Target(ladder[i]));
            var held = done.ElementAtOrDefault(i)?.Reading;
            var begins = at;
            var reached = begins + Change(stage, level, target);
            at = reached + Longest(stage, held);
            stages.Add(new LadderStage(stage.Name, target, begins, reached, at));
            readings.AddRange(Readings(held, reached));
            if (traces.TryGetValue(i, out var samples))
            {
                drawn.Add(Trace(samples, held, reached));
            }

            level = target;
        }

        return new PressureLadderPlot
        {
            Stages = stages,
            Readings = readings,
            Traces = drawn,
            Levels = [new PressureLevel("operating", plan.Meop)],
        };
    }

    private static TimeSpan Change(PressureStage stage, Pressure from, Pressure to) =>
        stage.RatePerMinute is { } rate && rate > Pressure.Zero
            ? TimeSpan.FromMinutes(Math.Abs((to - from).Pascals) / rate.Pascals)
            : UsualChange;

    private static TimeSpan Longest(PressureStage stage, StageReading? held)
    {
        var seconds = Math.Max(stage.HoldSeconds, held?.HeldSeconds ?? 0);
        return seconds > ShortestStage.TotalSeconds ? TimeSpan.FromSeconds(seconds) : ShortestStage;
    }

    private static IEnumerable<LadderReading> Readings(StageReading? held, TimeSpan reached)
    {
        if (held is { StartPressure: { } start, EndPressure: { } end })
        {
            yield return new(reached, Bar(start));
            yield return new(reached + TimeSpan.FromSeconds(held.HeldSeconds), Bar(end));
        }
        else if (held?.Burst is { } burst)
        {
            yield return new(reached, Bar(burst.Pressure));
        }
    }

    // The logged begin of the hold is laid on the planned one; what was logged before the test's zero is left out.
    private static List<LadderReading> Trace(
        IReadOnlyList<TraceSample> samples,
        StageReading? held,
        TimeSpan reached
    )
    {
        var start = (held?.StartPressure ?? held?.Burst?.Pressure)?.InUnit() ?? 0;
        var begin = samples.FirstOrDefault(s => s.Gauge.Bar >= start - RoundedBar).Time;
        return
        [
            .. samples
                .Select(s => new LadderReading(reached + s.Time - begin, s.Gauge))
                .Where(r => r.At >= TimeSpan.Zero),
        ];
    }

    private static Pressure Bar(Domain.Records.Measured measured) =>
        Pressure.FromBar(measured.InUnit());
}
