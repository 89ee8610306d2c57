using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Files;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Certificates.Issue;

/// <summary>Enters a certificate, signed by whoever has seen it.</summary>
public sealed class IssueCertificateHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    SiteDay day,
    TimeProvider clock
)
{
    public async Task<IReadOnlyList<Person>> PeopleAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .People.AsNoTracking()
            .Where(p => p.IsActive)
            .OrderBy(p => p.PrintedName)
            .ToListAsync(cancellation);
    }

    public async Task<Outcome<Certificate>> HandleAsync(
        IssueCertificateForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var person = await db.People.SingleOrDefaultAsync(p => p.Id == form.Person, cancellation);
        List<Refusal> refusals = [];
        if (person is null)
        {
            refusals.Add(new("person", "Choose whose certificate it is.", nameof(form.Person)));
        }

        var entries = new Entries();
        var text = form.Read(entries);
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

        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved.Refusals.ToList();
        }

        var others = await db
            .Certificates.AsNoTracking()
            .Where(c => c.PersonId == person!.Id)
            .ToListAsync(cancellation);
        var at = clock.GetUtcNow();
        var today = await day.TodayAsync(cancellation);
        var issued = Certificate.Issue(person!, text, file?.Sha256, others, today, actor, at);
        return issued.IsAccepted
            ? await SaveAsync(db, issued.Value, file, actor, at, cancellation)
            : issued;
    }

    private static async Task<Outcome<Certificate>> SaveAsync(
        WeldTraceDbContext db,
        Certificate certificate,
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

        db.AddRange(certificate, Signature.Of(certificate, actor, Certificate.IssueMeaning, at));
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted
            ? certificate
            : saved
                .Refusals.Select(r =>
                    r.Code == "exists" ? r with { Field = nameof(CertificateText.Number) } : r
                )
                .ToList();
    }
}
