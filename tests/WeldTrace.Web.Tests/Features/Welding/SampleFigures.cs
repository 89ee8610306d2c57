using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence.RunFigures;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Welding.ReviewSignal;

namespace WeldTrace.Web.Tests.Features.Welding;

/// <summary>Figures of runs that lie side by side, and the review of what stands out.</summary>
internal static class SampleFigures
{
    public static async Task ReviewAsync(WeldShop shop, WeldRun run) =>
        Accept.All(
            await new ReviewSignalHandler(
                shop.Database,
                new ReviewSignalReader(shop.Database),
                shop.Clock
            ).HandleAsync(
                run.Id,
                WeldParameter.AxialForce,
                new RunFigureFilter(null, null, null),
                new()
                {
                    Id = Guid.CreateVersion7(SampleTime.Start),
                    Conclusion = nameof(SignalConclusion.NoCauseFound),
                    Text = "Tool and clamps looked at.",
                },
                SamplePeople.Engineer,
                CancellationToken.None
            )
        );

    /// <summary>A run after twenty others of the same procedure, whose means go up and down by 20 N.</summary>
    public static async Task<WeldRun> AmongOthersAsync(WeldShop shop, double meanNewtons)
    {
        var run = await shop.RunAsync(await shop.StartedAsync());
        await using var db = shop.Database.CreateDbContext();
        db.Add(Figure(run, run.Id, 0, meanNewtons));
        db.AddRange(
            Enumerable
                .Range(1, 20)
                .Select(i => Figure(run, Guid.CreateVersion7(), -i, 8_000 + (i % 2 * 20)))
        );
        await db.SaveChangesAsync();
        return run;
    }

    public static RunFigureRow Figure(WeldRun run, Guid id, int hours, double mean) =>
        new()
        {
            RunId = id,
            Parameter = WeldParameter.AxialForce,
            StartedAt = run.StartedAt.AddHours(hours),
            ProcedureRevisionId = run.ProcedureRevisionId,
            MachineId = run.MachineId,
            ToolId = run.ToolId,
            OperatorId = run.OperatorId,
            MeanSi = mean,
            StandardDeviationSi = 10,
            ToolMetres = 1,
        };
}
