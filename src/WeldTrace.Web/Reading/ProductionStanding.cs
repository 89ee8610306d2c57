using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Reading;

/// <summary>How the production tests of a machine and a procedure stand.</summary>
/// <param name="Machine">Machine.</param>
/// <param name="Procedure">Released procedure revision.</param>
/// <param name="Rule">Rule of the design that asks for them.</param>
/// <param name="Since">What happened since the last.</param>
/// <param name="Due">Why one is due now; empty when none is.</param>
/// <param name="IsSoon">Whether most of the length or time is used up.</param>
public sealed record ProductionStanding(
    Machine Machine,
    ProcedureRevision Procedure,
    ProductionTestRule Rule,
    ProductionSince Since,
    IReadOnlyList<string> Due,
    bool IsSoon
)
{
    /// <summary>Machines that weld to a procedure whose joints a released design wants tested, with what is due.</summary>
    public static async Task<IReadOnlyList<ProductionStanding>> ReadAsync(
        WeldTraceDbContext db,
        DateTimeOffset now,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var designs = await db
            .VesselDesigns.AsNoTracking()
            .Where(d => d.State == DesignState.Released)
            .ToListAsync(cancellation);
        var rules = designs
            .Where(d => d.Content.ProductionTests is not null)
            .SelectMany(d =>
                d.Content.Joints.Select(j => (j.ProcedureNumber, Rule: d.Content.ProductionTests!))
            )
            .DistinctBy(r => (r.ProcedureNumber, r.Rule))
            .ToList();
        var numbers = rules.Select(r => r.ProcedureNumber).ToList();
        var procedures = await db
            .ProcedureRevisions.AsNoTracking()
            .Where(p => numbers.Contains(p.Number) && p.State == ProcedureState.Released)
            .ToListAsync(cancellation);
        List<ProductionStanding> standings = [];
        foreach (var procedure in procedures)
        {
            var used = db
                .WeldRuns.Where(r => r.ProcedureRevisionId == procedure.Id)
                .Select(r => r.MachineId);
            var machines = await db
                .Machines.AsNoTracking()
                .Where(m => used.Contains(m.Id))
                .OrderBy(m => m.Name)
                .ToListAsync(cancellation);
            foreach (var machine in machines)
            {
                var since = await db.LoadProductionSinceAsync(
                    machine.Id,
                    procedure.Id,
                    now,
                    cancellation
                );
                standings.AddRange(
                    rules
                        .Where(r => r.ProcedureNumber == procedure.Number)
                        .Select(r => new ProductionStanding(
                            machine,
                            procedure,
                            r.Rule,
                            since,
                            ProductionTestDue.Reasons(r.Rule, since, machine, null, now),
                            ProductionTestDue.IsSoon(r.Rule, since, now)
                        ))
                );
            }
        }

        return standings;
    }
}
