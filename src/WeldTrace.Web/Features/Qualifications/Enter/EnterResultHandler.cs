using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Files;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Qualifications.Enter;

/// <summary>What the form of a result shows.</summary>
public sealed record EnterResultView(
    QualificationRecord Record,
    TestStanding Test,
    LimitTable Imperfections
);

/// <summary>Enters the result of a planned test, signed by whoever made it.</summary>
public sealed class EnterResultHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    SiteDay day,
    TimeProvider clock
)
{
    public async Task<EnterResultView?> FindAsync(
        Guid id,
        string plannedId,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var records = await db.FindQualificationAsync(id, cancellation);
        return records?.Standing.Tests.FirstOrDefault(t => t.Planned.Id == plannedId) is { } test
            ? new EnterResultView(
                records.Record,
                test,
                await db.TableOfAsync(records.Record, LimitKind.Imperfections, cancellation)
            )
            : null;
    }

    public async Task<Outcome<SpecimenTest>> HandleAsync(
        Guid id,
        string plannedId,
        EnterResultForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var records = await db.FindQualificationAsync(id, cancellation);
        if (records?.Standing.Tests.FirstOrDefault(t => t.Planned.Id == plannedId) is not { } test)
        {
            return new Refusal("test", "The plan has no such test.");
        }

        var entries = new Entries();
        var (header, entry) = (form.ReadHeader(entries), form.Read(test.Planned.Kind, entries));
        List<Refusal> refusals = [];
        var file = await PaperReader.ReadOptionalAsync(
            form.File,
            nameof(form.File),
            refusals,
            cancellation
        );
        refusals.AddRange(entries.Refusals);
        if (refusals.Count > 0)
        {
            return refusals;
        }

        var at = clock.GetUtcNow();
        var entered = SpecimenTest.Enter(
            FormIdentity.OrNew(form.Id, clock),
            await FactsAsync(db, records, test, form, actor, cancellation),
            header,
            entry,
            file?.Sha256,
            actor,
            at
        );
        if (!entered.IsAccepted)
        {
            return entered;
        }

        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        return proved.IsAccepted
            ? await SaveAsync(db, entered.Value, file, actor, at, cancellation)
            : proved.Refusals.ToList();
    }

    private async Task<SpecimenFacts> FactsAsync(
        WeldTraceDbContext db,
        QualificationRecords records,
        TestStanding test,
        EnterResultForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var mark = form.Instrument?.Trim() ?? "";
        var needsInstrument = TestKinds.Of(test.Planned.Kind).Instrument is not null;
        return new SpecimenFacts(
            records.Record,
            test.Planned,
            records.Standing.Pieces.First(p => p.Planned.Mark == test.Planned.PieceMark).Welded,
            test.Results,
            records.Revision.Content,
            await db.TableOfAsync(records.Record, LimitKind.Imperfections, cancellation),
            await db
                .Certificates.AsNoTracking()
                .Where(c => c.PersonId == actor.PersonId)
                .ToListAsync(cancellation),
            needsInstrument
                ? await db
                    .Instruments.AsNoTracking()
                    .SingleOrDefaultAsync(i => i.Mark == mark, cancellation)
                : null,
            mark,
            await day.TodayAsync(cancellation)
        );
    }

    private static async Task<Outcome<SpecimenTest>> SaveAsync(
        WeldTraceDbContext db,
        SpecimenTest test,
        Attachment? file,
        Actor actor,
        DateTimeOffset at,
        CancellationToken cancellation
    )
    {
        if (file is not null)
        {
            await db.KeepAsync(file, cancellation);
        }

        db.AddRange(test, Signature.Of(test, actor, SpecimenTest.TestedMeaning, at));
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted ? test : saved.Refusals.ToList();
    }
}
