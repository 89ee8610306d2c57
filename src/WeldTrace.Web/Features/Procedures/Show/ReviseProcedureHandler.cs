using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Procedures.Show;

public sealed class ReviseProcedureForm
{
    public string? Reason { get; set; }
}

/// <summary>Makes the next revision from an existing one.</summary>
public sealed class ReviseProcedureHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<Outcome<ProcedureRevision>> HandleAsync(
        Guid id,
        ReviseProcedureForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var revision = await db
            .ProcedureRevisions.AsNoTracking()
            .SingleOrDefaultAsync(p => p.Id == id, cancellation);
        if (revision is null)
        {
            return new Refusal("procedure", "There is no such procedure revision.");
        }

        var last = await db
            .ProcedureRevisions.Where(p => p.Number == revision.Number)
            .MaxAsync(p => p.RevisionIndex, cancellation);
        var next = revision.Revise(last + 1, form.Reason ?? "", actor, clock.GetUtcNow());
        if (!next.IsAccepted)
        {
            return RenameField(next);
        }

        db.Add(next.Value);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted ? next : saved.Refusals.ToList();
    }

    private static Outcome<ProcedureRevision> RenameField(Outcome<ProcedureRevision> outcome) =>
        outcome
            .Refusals.Select(r =>
                r.Field == nameof(ProcedureRevision.ChangeReason)
                    ? r with
                    {
                        Field = nameof(ReviseProcedureForm.Reason),
                    }
                    : r
            )
            .ToList();
}
