using WeldTrace.Documents.Drawings;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Web.Reading;

/// <summary>The ladder of a design over time, with the readings of a test, as the drawing takes it.</summary>
public static class PressureLadders
{
    // The design gives no rates, so the flanks are only drawn, at a fixed width.
    private static readonly TimeSpan Flank = TimeSpan.FromMinutes(2);

    public static PressureLadderPlot Plot(PressurePlan plan, PressureTest? test)
    {
        ArgumentNullException.ThrowIfNull(plan);
        List<LadderStage> stages = [];
        List<LadderReading> readings = [];
        var now = TimeSpan.Zero;
        foreach (var (stage, index) in plan.Stages.Select((s, i) => (s, i)))
        {
            var held = now + Flank;
            var reading = test?.Stages.ElementAtOrDefault(index)?.Reading;
            var hold = TimeSpan.FromSeconds(Math.Max(stage.HoldSeconds, reading?.HeldSeconds ?? 0));
            var end = held + (hold > TimeSpan.Zero ? hold : Flank);
            stages.Add(new LadderStage(stage.Name, plan.Target(stage), now, held, end));
            readings.AddRange(Readings(reading, held));
            now = end;
        }

        return new PressureLadderPlot
        {
            Stages = stages,
            Readings = readings,
            Levels = [new PressureLevel("MEOP", plan.Meop)],
        };
    }

    private static IEnumerable<LadderReading> Readings(StageReading? reading, TimeSpan held)
    {
        if (reading?.StartPressure is { } start)
        {
            yield return new LadderReading(held, Pressure.FromBar(start.InUnit()));
        }

        if (reading?.EndPressure is { } end)
        {
            yield return new LadderReading(
                held + TimeSpan.FromSeconds(reading.HeldSeconds),
                Pressure.FromBar(end.InUnit())
            );
        }
    }
}
