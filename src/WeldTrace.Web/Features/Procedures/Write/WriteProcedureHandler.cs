using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Files;

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
        var revision = id is null
            ? null
            : await db
                .ProcedureRevisions.AsNoTracking()
                .SingleOrDefaultAsync(p => p.Id == id, cancellation);
        return new WriteProcedureChoices(
            revision,
            await db
                .ToolDesigns.AsNoTracking()
                .OrderBy(d => d.Number)
                .ThenByDescending(d => d.RevisionIndex)
                .ToListAsync(cancellation),
            await db.Machines.AsNoTracking().OrderBy(m => m.Name).ToListAsync(cancellation),
            await db
                .Instruments.AsNoTracking()
                .Where(i => i.WithdrawnBecause == null)
                .OrderBy(i => i.Mark)
                .ToListAsync(cancellation)
        )
        {
            Pin = revision is null
                ? null
                : await db.FindMeasuredPinAsync(revision.Content.ToolDesignId, cancellation),
            Drawn = await db.FindDrawnJointsAsync(revision?.Number, cancellation),
        };
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
        var revision = id is null
            ? null
            : await db.ProcedureRevisions.SingleOrDefaultAsync(p => p.Id == id, cancellation);
        if (id is not null && revision is null)
        {
            return new Refusal("procedure", "There is no such procedure revision.");
        }

        var (content, tool, machine, refusals) = await ReadAsync(db, form, revision, cancellation);
        refusals.AddRange(content is null ? [] : ProcedureFit.Check(content, tool, machine));
        if (content is null || refusals.Count > 0)
        {
            return AtFields(form, refusals);
        }

        var at = clock.GetUtcNow();
        var written = revision is null
            ? ProcedureRevision.Write(form.Number ?? "", form.Title ?? "", content, actor, at)
            : Edit(revision, form.Title ?? "", content, actor, at);
        if (!written.IsAccepted)
        {
            return AtFields(form, written.Refusals);
        }

        if (revision is null)
        {
            db.Add(written.Value);
        }

        var saved = await db.SaveEditAsync(written.Value, form, cancellation);
        return saved.IsAccepted ? written : saved.Refusals.ToList();
    }

    private static async Task<(ProcedureContent?, ToolDesign?, Machine?, List<Refusal>)> ReadAsync(
        WeldTraceDbContext db,
        WriteProcedureForm form,
        ProcedureRevision? revision,
        CancellationToken cancellation
    )
    {
        List<Refusal> wrong = [];
        var file = await PaperReader.ReadOptionalAsync(
            form.Details.Sketch,
            nameof(form.Details.Sketch),
            wrong,
            cancellation
        );
        if (file is not null)
        {
            await db.KeepAsync(file, cancellation);
        }

        var machineId = Guid.TryParse(form.Details.Machine, out var chosen) ? chosen : Guid.Empty;
        var kept = form.Details.DropSketch ? null : revision?.Content.DetailsOrNone.Sketch;
        var tool = await db
            .ToolDesigns.AsNoTracking()
            .SingleOrDefaultAsync(d => d.Id == form.ToolDesignId, cancellation);
        var machine = await db
            .Machines.AsNoTracking()
            .SingleOrDefaultAsync(m => m.Id == machineId, cancellation);
        var (content, refusals) = TypedProcedure.Read(
            form,
            tool,
            new NamedByDetails(
                machine,
                await db
                    .Instruments.AsNoTracking()
                    .Where(i => form.Details.Instruments.Contains(i.Id))
                    .OrderBy(i => i.Mark)
                    .ToListAsync(cancellation),
                file is null ? kept : new JointSketch(file.Sha256, file.MediaType)
            )
        );
        return (content, tool, machine, [.. wrong, .. refusals]);
    }

    private static Outcome<ProcedureRevision> Edit(
        ProcedureRevision revision,
        string title,
        ProcedureContent content,
        Actor actor,
        DateTimeOffset at
    )
    {
        var edited = revision.Edit(title, content, actor, at);
        return edited.IsAccepted ? revision : edited.Refusals.ToList();
    }

    private static List<Refusal> AtFields(
        WriteProcedureForm form,
        IReadOnlyList<Refusal> refusals
    ) => [.. refusals.Select(r => TypedProcedure.AtField(form, r))];
}
