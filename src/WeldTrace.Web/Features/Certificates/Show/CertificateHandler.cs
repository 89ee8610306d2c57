using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Certificates.Show;

public sealed class ConfirmForm
{
    public string? Password { get; set; }
}

public sealed class RevokeForm
{
    public string? JointTypes { get; set; }

    public string? Reason { get; set; }

    public string? Password { get; set; }
}

/// <summary>A certificate with the signatures under it and, when it is in doubt, what was welded under it.</summary>
public sealed record CertificateView(
    Certificate Certificate,
    IReadOnlyList<Signature> Signatures,
    IReadOnlyList<WeldRun> RunsSinceRevocation
);

/// <summary>Shows a certificate, confirms it and revokes it.</summary>
public sealed class CertificateHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    SiteReader sites,
    TimeProvider clock
)
{
    private const int MostRuns = 200;

    public async Task<CertificateView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var certificate = await db
            .Certificates.AsNoTracking()
            .SingleOrDefaultAsync(c => c.Id == id, cancellation);
        return certificate is null
            ? null
            : new CertificateView(
                certificate,
                await db
                    .Signatures.AsNoTracking()
                    .Where(s => s.SignedId == id)
                    .OrderBy(s => s.At)
                    .ToListAsync(cancellation),
                await RunsInDoubtAsync(db, certificate, cancellation)
            );
    }

    public Task<Outcome> ConfirmAsync(
        Guid id,
        ConfirmForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return SignAsync(
            id,
            form.Password,
            actor,
            c => c.ConfirmationMeaning,
            (c, today, at) => c.Confirm(today, actor, at),
            cancellation
        );
    }

    public Task<Outcome> RevokeAsync(
        Guid id,
        RevokeForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        IReadOnlyList<string> joints = string.IsNullOrEmpty(form.JointTypes)
            ? []
            : [form.JointTypes];
        return SignAsync(
            id,
            form.Password,
            actor,
            _ => Certificate.RevokeMeaning,
            (c, today, at) => c.Revoke(joints, form.Reason ?? "", today, actor, at),
            cancellation
        );
    }

    private async Task<Outcome> SignAsync(
        Guid id,
        string? password,
        Actor actor,
        Func<Certificate, string> meaning,
        Func<Certificate, DateOnly, DateTimeOffset, Outcome> act,
        CancellationToken cancellation
    )
    {
        var proved = await passwords.ForSignatureAsync(actor, password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var certificate = await db.Certificates.SingleOrDefaultAsync(c => c.Id == id, cancellation);
        if (certificate is null)
        {
            return Outcome.Refused("certificate", "There is no such certificate.");
        }

        var at = clock.GetUtcNow();
        var today = SiteDay.Of(await sites.GetAsync(cancellation), at);
        var outcome = act(certificate, today, at);
        if (!outcome.IsAccepted)
        {
            return outcome;
        }

        db.Add(Signature.Of(certificate, actor, meaning(certificate), at));
        return await db.SaveAsync(cancellation);
    }

    // Whatever was welded since the last time the work was confirmed may have to be looked at again.
    private async Task<IReadOnlyList<WeldRun>> RunsInDoubtAsync(
        WeldTraceDbContext db,
        Certificate certificate,
        CancellationToken cancellation
    )
    {
        if (certificate.Revocations.Count == 0 || certificate.Text.Operator is null)
        {
            return [];
        }

        var since =
            certificate.Confirmations.Count > 0
                ? certificate.Confirmations[^1].On
                : certificate.Text.TestedOn;
        var zone = (await sites.GetAsync(cancellation)).TimeZone;
        var start = TimeZoneInfo.ConvertTimeToUtc(since.ToDateTime(TimeOnly.MinValue), zone);
        var from = new DateTimeOffset(start, TimeSpan.Zero);
        return await db
            .WeldRuns.AsNoTracking()
            .Where(r => r.OperatorId == certificate.PersonId && r.StartedAt >= from)
            .OrderBy(r => r.StartedAt)
            .Take(MostRuns)
            .ToListAsync(cancellation);
    }
}
