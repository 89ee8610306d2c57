using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Procedures.Write;

/// <summary>Writes a new procedure, or changes a draft.</summary>
public sealed class WriteProcedureHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<WriteProcedureChoices> ChoicesAsync(Guid? id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return new WriteProcedureChoices(
            id is null
                ? null
                : await db
                    .ProcedureRevisions.AsNoTracking()
                    .SingleOrDefaultAsync(p => p.Id == id, cancellation),
            await db
                .ToolDesigns.AsNoTracking()
                .OrderBy(d => d.Number)
                .ThenByDescending(d => d.RevisionIndex)
                .ToListAsync(cancellation)
        );
    }

    /// <param name="id">Draft to change; null for a new procedure.</param>
    /// <param name="form">As typed.</param>
    /// <param name="actor">Author.</param>
    /// <param name="cancellation">Nothing is saved.</param>
    public async Task<Outcome<ProcedureRevision>> HandleAsync(
        Guid? id,
        WriteProcedureForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var tool = await db
            .ToolDesigns.AsNoTracking()
            .SingleOrDefaultAsync(d => d.Id == form.ToolDesignId, cancellation);
        var (content, refusals) = TypedProcedure.Read(form, tool);
        if (content is null)
        {
            return refusals;
        }

        var written = id is null
            ? ProcedureRevision.Write(
                form.Number ?? "",
                form.Title ?? "",
                content,
                actor,
                clock.GetUtcNow()
            )
            : await EditAsync(db, id.Value, form, content, actor, cancellation);
        if (!written.IsAccepted)
        {
            return written.Refusals.Select(r => TypedProcedure.AtField(form, r)).ToList();
        }

        if (id is null)
        {
            db.Add(written.Value);
        }

        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted ? written : saved.Refusals.ToList();
    }

    private async Task<Outcome<ProcedureRevision>> EditAsync(
        WeldTraceDbContext db,
        Guid id,
        WriteProcedureForm form,
        ProcedureContent content,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var revision = await db.ProcedureRevisions.SingleOrDefaultAsync(
            p => p.Id == id,
            cancellation
        );
        if (revision is null)
        {
            return new Refusal("procedure", "There is no such procedure revision.");
        }

        var edited = revision.Edit(form.Title ?? "", content, actor, clock.GetUtcNow());
        return edited.IsAccepted ? revision : edited.Refusals.ToList();
    }
}
