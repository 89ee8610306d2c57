using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.Features.Testing.Logs;

namespace WeldTrace.Web.Features.Testing.ShowTest;

/// <summary>A recorded test with what stands around it.</summary>
public sealed record ShownTest(
    TestRecord Test,
    VesselDesign Design,
    IReadOnlyList<Signature> Signatures,
    IReadOnlyList<Finding> Findings,
    IReadOnlyCollection<Guid> WeldedBy
)
{
    /// <summary>Logged samples of the stages of a pressure test, thinned for drawing.</summary>
    public IReadOnlyDictionary<int, IReadOnlyList<TraceSample>> Traces { get; init; } =
        new Dictionary<int, IReadOnlyList<TraceSample>>();

    /// <summary>The runs that a section shows, each with the head of its process log; of other tests none.</summary>
    public IReadOnlyList<ShownRun> Runs { get; init; } = [];
}

/// <summary>A run with the head of its process log.</summary>
public sealed record ShownRun(RunRecords Records, LogHeader? Header);

public sealed class ShowTestHandler(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<ShownTest?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        if (await db.FindTestAsync(id, cancellation) is not { } test)
        {
            return null;
        }

        var vessel = await db.Vessels.SingleAsync(v => v.Id == test.VesselId, cancellation);
        return new ShownTest(
            test,
            await db.VesselDesigns.SingleAsync(d => d.Id == vessel.DesignId, cancellation),
            await db
                .Signatures.Where(s => s.SignedId == id)
                .OrderBy(s => s.At)
                .ToListAsync(cancellation),
            await db
                .Findings.Where(f => f.EvidenceId == id)
                .OrderBy(f => f.Number)
                .ToListAsync(cancellation),
            await db.WhoWeldedAsync(vessel.Id, cancellation)
        )
        {
            Traces = await db.TracesAsync(test as PressureTest, cancellation),
            Runs = test is SectionExamination section
                ? await RunsAsync(db, section, cancellation)
                : [],
        };
    }

    private static async Task<IReadOnlyList<ShownRun>> RunsAsync(
        WeldTraceDbContext db,
        SectionExamination section,
        CancellationToken cancellation
    )
    {
        List<ShownRun> runs = [];
        foreach (var run in await db.RunsOfJointAsync(section, cancellation))
        {
            runs.Add(new(run, await db.FindLogHeaderAsync(run.Run.Id, cancellation)));
        }

        return runs;
    }
}
