using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Paths;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Designs;

/// <summary>A joint with the procedure and tool that its passes are laid out by; null when there is none yet.</summary>
public sealed record JointView(Joint Joint, ProcedureRevision? Procedure, ToolDesign? Tool)
{
    /// <summary>The passes laid out with the set points; empty without procedure or tool.</summary>
    public IReadOnlyList<(PassPlan Plan, Computed<CircularPassLayout> Layout)> Layouts { get; } =
        Procedure is null || Tool is null
            ? []
            :
            [
                .. Joint.Passes.Select(p =>
                    (p, PassLayout.Compute(p, Procedure.Content, Tool.Geometry))
                ),
            ];
}

/// <summary>A design revision with everything its page shows.</summary>
public sealed record DesignView(
    VesselDesign Design,
    IReadOnlyList<JointView> Joints,
    IReadOnlyList<VesselDesign> Revisions,
    IReadOnlyList<Signature> Signatures
);

public sealed class DesignReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<DesignView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var design = await db
            .VesselDesigns.AsNoTracking()
            .SingleOrDefaultAsync(d => d.Id == id, cancellation);
        return design is null
            ? null
            : new DesignView(
                design,
                await JointsAsync(db, design.Content, cancellation),
                await db
                    .VesselDesigns.AsNoTracking()
                    .Where(d => d.Number == design.Number)
                    .OrderByDescending(d => d.RevisionIndex)
                    .ToListAsync(cancellation),
                await db
                    .Signatures.AsNoTracking()
                    .Where(s => s.SignedId == id)
                    .OrderBy(s => s.At)
                    .ToListAsync(cancellation)
            );
    }

    private static async Task<IReadOnlyList<JointView>> JointsAsync(
        WeldTraceDbContext db,
        DesignContent content,
        CancellationToken cancellation
    )
    {
        var numbers = content.Joints.Select(j => j.ProcedureNumber).ToList();
        var procedures = await db
            .ProcedureRevisions.AsNoTracking()
            .Where(p => numbers.Contains(p.Number))
            .ToListAsync(cancellation);
        var toolIds = procedures.Select(p => p.Content.ToolDesignId).ToList();
        var tools = await db
            .ToolDesigns.AsNoTracking()
            .Where(d => toolIds.Contains(d.Id))
            .ToDictionaryAsync(d => d.Id, cancellation);
        return
        [
            .. content.Joints.Select(joint =>
            {
                var procedure = procedures
                    .Where(p => p.Number == joint.ProcedureNumber)
                    .OrderByDescending(p => p.State == ProcedureState.Released)
                    .ThenByDescending(p => p.RevisionIndex)
                    .FirstOrDefault();
                return new JointView(
                    joint,
                    procedure,
                    procedure is null
                        ? null
                        : tools.GetValueOrDefault(procedure.Content.ToolDesignId)
                );
            }),
        ];
    }
}
