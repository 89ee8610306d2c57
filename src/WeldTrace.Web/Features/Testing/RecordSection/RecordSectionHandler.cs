using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Testing.RecordSection;

public sealed class RecordSectionHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
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

    public async Task<Outcome> HandleAsync(
        string serial,
        int sequence,
        RecordSectionForm form,
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
        var (cut, measurement) = (form.ReadCut(facts.Step, entries), form.ReadMeasurement(entries));
        var photograph = await PhotographReader.ReadAsync(form.Photograph, cancellation);
        if (!photograph.IsAccepted || entries.Refusals.Count > 0)
        {
            return Outcome.From([.. entries.Refusals, .. photograph.Refusals]);
        }

        facts = facts with
        {
            Typed = await db.TypedInstrumentsAsync(
                cancellation,
                (SectionExamination.Instrument, form.Instrument)
            ),
        };
        form.Id = FormIdentity.OrNew(form.Id, clock);
        var section = SectionExamination.Record(
            form.Id,
            facts,
            cut,
            measurement,
            photograph.Value.Photograph,
            form.Remark,
            actor,
            clock.GetUtcNow()
        );
        if (!section.IsAccepted)
        {
            return section.WithoutValue();
        }

        db.Add(section.Value);
        await db.KeepAsync(AttachmentOf(photograph.Value), cancellation);
        return await db.SaveAsync(cancellation);
    }

    private static Attachment AttachmentOf(BroughtPhotograph brought) =>
        new()
        {
            Sha256 = brought.Photograph.Sha256,
            MediaType = brought.Photograph.MediaType,
            Length = brought.Bytes.LongLength,
            Bytes = brought.Bytes,
        };
}
