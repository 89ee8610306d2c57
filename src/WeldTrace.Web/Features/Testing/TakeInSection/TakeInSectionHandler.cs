using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Pictures;

namespace WeldTrace.Web.Features.Testing.TakeInSection;

public sealed class TakeInSectionHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PictureStore pictures,
    TimeProvider clock
)
{
    public async Task<TestFacts?> FindAsync(
        string serial,
        int sequence,
        Actor actor,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var examiner = await db.ExaminerAsync(actor, clock.GetUtcNow(), cancellation);
        return await db.FindTestFactsAsync(serial, sequence, examiner, cancellation);
    }

    /// <summary>The tables of limits in force, by their code.</summary>
    public async Task<IReadOnlyList<LimitTable>> TablesAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .LimitTables.AsNoTracking()
            .Where(t => t.Covers == LimitKind.Imperfections && t.SupersededById == null)
            .OrderBy(t => t.Code)
            .ToListAsync(cancellation);
    }

    public async Task<Outcome> HandleAsync(
        string serial,
        int sequence,
        TakeInSectionForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.Sections.AnyAsync(t => t.Id == form.Id, cancellation))
        {
            return Outcome.Accepted;
        }

        var examiner = await db.ExaminerAsync(actor, clock.GetUtcNow(), cancellation);
        if (await db.FindTestFactsAsync(serial, sequence, examiner, cancellation) is not { } facts)
        {
            return StepNotFound.Outcome(serial, sequence);
        }

        var entries = new Entries();
        var cut = form.ReadCut(facts.Step, entries);
        var table = await FindTableAsync(db, form.Limits, cancellation);
        var photograph = await PictureReader.ReadAsync(form.Photograph, cancellation);
        if (!photograph.IsAccepted || table is null || entries.Refusals.Count > 0)
        {
            return Outcome.From([
                .. entries.Refusals,
                .. table is null ? [NoTable] : (IEnumerable<Refusal>)[],
                .. photograph.Refusals,
            ]);
        }

        facts = facts with
        {
            Typed = await db.TypedInstrumentsAsync(
                cancellation,
                (SectionExamination.Instrument, form.Instrument)
            ),
        };
        form.Id = FormIdentity.OrNew(form.Id, clock);
        var section = SectionExamination.TakeIn(
            form.Id,
            facts,
            cut,
            form.ReadStandards(table, facts.Design.Content.Joint(cut.JointCode)),
            photograph.Value.Photograph,
            form.Remark,
            actor,
            clock.GetUtcNow()
        );
        return section.IsAccepted
            ? await SaveAsync(db, section.Value, photograph.Value, cancellation)
            : section.WithoutValue();
    }

    private static Refusal NoTable { get; } =
        new(
            "limits",
            "Choose the table of limits by which the section is judged.",
            nameof(TakeInSectionForm.Limits)
        );

    // The pixels are read to the end before the save is done: a damaged picture is refused, not shown broken later.
    private async Task<Outcome> SaveAsync(
        WeldTraceDbContext db,
        SectionExamination section,
        BroughtPhotograph brought,
        CancellationToken cancellation
    )
    {
        db.Add(section);
        await db.KeepAsync(brought.ToAttachment(), cancellation);
        var reading = pictures.TakeInAsync(brought, cancellation);
        var saved = await db.SaveAsync(reading, cancellation);
        var read = await reading;
        return read.IsAccepted ? saved : read;
    }

    private static async Task<LimitTable?> FindTableAsync(
        WeldTraceDbContext db,
        string? chosen,
        CancellationToken cancellation
    ) =>
        Guid.TryParse(chosen, out var id)
            ? await db
                .LimitTables.AsNoTracking()
                .SingleOrDefaultAsync(
                    t =>
                        t.Id == id
                        && t.Covers == LimitKind.Imperfections
                        && t.SupersededById == null,
                    cancellation
                )
            : null;
}
