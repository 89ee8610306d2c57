using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Persistence.Loading;

/// <summary>A run with the records that it changes and is judged by.</summary>
/// <param name="Run">The run.</param>
/// <param name="Vessel">Vessel welded.</param>
/// <param name="Tool">Tool used.</param>
/// <param name="Revision">Procedure revision it was welded to.</param>
/// <param name="Design">Design of the vessel.</param>
public sealed record RunRecords(
    WeldRun Run,
    Vessel Vessel,
    Tool Tool,
    ProcedureRevision Revision,
    VesselDesign Design
)
{
    /// <summary>The pass of the drawing that was welded.</summary>
    public PassPlan Pass =>
        Design.Content.Joint(Run.JointCode)?.Pass(Run.PassNumber)
        ?? throw new InvalidDataException($"{Design.Label} does not have the pass of {Run.Label}.");
}

public static class RunLoading
{
    /// <summary>A run with its vessel, tool, procedure revision and design, all tracked; null when there is no such run.</summary>
    public static async Task<RunRecords?> FindRunAsync(
        this WeldTraceDbContext db,
        Guid runId,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var run = await db.WeldRuns.SingleOrDefaultAsync(r => r.Id == runId, cancellation);
        if (run is null)
        {
            return null;
        }

        var vessel = await db.Vessels.SingleAsync(v => v.Id == run.VesselId, cancellation);
        return new RunRecords(
            run,
            vessel,
            await db.Tools.SingleAsync(t => t.Id == run.ToolId, cancellation),
            await db.ProcedureRevisions.SingleAsync(
                p => p.Id == run.ProcedureRevisionId,
                cancellation
            ),
            await db.VesselDesigns.SingleAsync(d => d.Id == vessel.DesignId, cancellation)
        );
    }

    /// <summary>Findings that a run is the evidence of, in the order in which they were opened.</summary>
    public static Task<List<Finding>> FindingsOfRunAsync(
        this WeldTraceDbContext db,
        Guid runId,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        return db
            .Findings.AsNoTracking()
            .Where(f => f.EvidenceId == runId)
            .OrderBy(f => f.Number)
            .ToListAsync(cancellation);
    }
}
