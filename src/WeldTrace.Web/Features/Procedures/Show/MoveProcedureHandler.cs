using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Procedures.Show;

public sealed class MoveProcedureForm
{
    public string? Key { get; set; }

    public string? Password { get; set; }
}

/// <summary>Takes a procedure revision one state on, signed.</summary>
public sealed class MoveProcedureHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    TimeProvider clock
)
{
    public async Task<Outcome> HandleAsync(
        Guid id,
        MoveProcedureForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var move = ProcedureMove.All.FirstOrDefault(m => m.Key == form.Key);
        if (move is null)
        {
            return Outcome.Refused("act", "Choose what to sign.");
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var revision = await db.ProcedureRevisions.SingleOrDefaultAsync(
            p => p.Id == id,
            cancellation
        );
        if (revision is null)
        {
            return Outcome.Refused("procedure", "There is no such procedure revision.");
        }

        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved;
        }

        var at = clock.GetUtcNow();
        var outcome = await MoveAsync(db, revision, move, actor, at, cancellation);
        if (!outcome.IsAccepted)
        {
            return outcome;
        }

        db.Add(Signature.Of(revision, actor, move.Meaning, at));
        return await db.SaveAsync(cancellation);
    }

    private static async Task<Outcome> MoveAsync(
        WeldTraceDbContext db,
        ProcedureRevision revision,
        ProcedureMove move,
        Actor actor,
        DateTimeOffset at,
        CancellationToken cancellation
    )
    {
        if (move.Key == "trial")
        {
            var tool = await db
                .ToolDesigns.AsNoTracking()
                .SingleOrDefaultAsync(d => d.Id == revision.Content.ToolDesignId, cancellation);
            var machineId = revision.Content.DetailsOrNone.Machine?.Id;
            var machine = await db
                .Machines.AsNoTracking()
                .SingleOrDefaultAsync(m => m.Id == machineId, cancellation);
            var misfits = ProcedureFit.Check(revision.Content, tool, machine);
            return misfits.Count > 0 ? Outcome.From(misfits) : revision.PutOnTrial(actor, at);
        }

        if (move.Key == "qualify")
        {
            return revision.Qualify(await SupportAsync(db, revision, cancellation), actor, at);
        }

        var earlier = await db.ProcedureRevisions.SingleOrDefaultAsync(
            p =>
                p.Number == revision.Number
                && p.State == ProcedureState.Released
                && p.Id != revision.Id,
            cancellation
        );
        return revision.Release(earlier, actor, at);
    }

    /// <summary>The signed qualification that covers the revision; else the one nearest to it, so that the refusal says what is missing.</summary>
    private static async Task<QualificationRecord?> SupportAsync(
        WeldTraceDbContext db,
        ProcedureRevision revision,
        CancellationToken cancellation
    )
    {
        var records = await db
            .Qualifications.AsNoTracking()
            .Where(q => q.ProcedureNumber == revision.Number)
            .ToListAsync(cancellation);
        return records
            .Where(q => q.State != QualificationState.Abandoned)
            .OrderBy(q => ProcedureSupport.Against(revision, q).Count)
            .ThenByDescending(q => q.ProcedureRevisionId == revision.Id)
            .FirstOrDefault();
    }
}
