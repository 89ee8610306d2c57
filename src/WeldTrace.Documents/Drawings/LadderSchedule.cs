using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Documents.Drawings;

/// <summary>Lays the ladder of a design out over time. The design sets no rate of rise, so every rise is drawn as two minutes.</summary>
public static class LadderSchedule
{
    private static readonly TimeSpan Rise = TimeSpan.FromMinutes(2);
    private static readonly TimeSpan ShortestStage = TimeSpan.FromMinutes(1);

    /// <summary>The planned stages with what was read in those that are done.</summary>
    /// <param name="plan">Pressures of the design.</param>
    /// <param name="done">Stages recorded so far, in order.</param>
    public static PressureLadderPlot Of(PressurePlan plan, IReadOnlyList<StageResult> done)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(done);
        List<LadderStage> stages = [];
        List<LadderReading> readings = [];
        var at = TimeSpan.Zero;
        for (var i = 0; i < plan.Stages.Count; i++)
        {
            var stage = plan.Stages[i];
            var held = done.ElementAtOrDefault(i)?.Reading;
            var begins = at + Rise;
            at = begins + Longest(stage, held);
            stages.Add(new LadderStage($"{i + 1}", plan.Target(stage), begins - Rise, begins, at));
            readings.AddRange(Readings(held, begins));
        }

        return new PressureLadderPlot
        {
            Stages = stages,
            Readings = readings,
            Levels = [new PressureLevel("operating", plan.Meop)],
        };
    }

    private static TimeSpan Longest(PressureStage stage, StageReading? held)
    {
        var seconds = Math.Max(stage.HoldSeconds, held?.HeldSeconds ?? 0);
        return seconds > ShortestStage.TotalSeconds ? TimeSpan.FromSeconds(seconds) : ShortestStage;
    }

    private static IEnumerable<LadderReading> Readings(StageReading? held, TimeSpan begins)
    {
        if (held is { StartPressure: { } start, EndPressure: { } end })
        {
            yield return new(begins, Bar(start));
            yield return new(begins + TimeSpan.FromSeconds(held.HeldSeconds), Bar(end));
        }
    }

    private static Engineering.Quantities.Pressure Bar(Domain.Records.Measured measured) =>
        Engineering.Quantities.Pressure.FromBar(measured.InUnit());
}
