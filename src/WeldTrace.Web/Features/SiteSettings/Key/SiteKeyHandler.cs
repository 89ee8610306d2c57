using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.SiteSettings.Key;

public sealed class SiteKeyForm
{
    public string? Reason { get; set; }

    public string? Password { get; set; }
}

/// <summary>The keys of the site: which one signs, and how another takes its place.</summary>
public sealed class SiteKeyHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteKeyFolder folder,
    PasswordCheck passwords,
    TimeProvider clock
)
{
    public async Task<IReadOnlyList<SigningKey>> ReadAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .SigningKeys.AsNoTracking()
            .OrderByDescending(k => k.Since)
            .ThenByDescending(k => k.Until == null)
            .ToListAsync(cancellation);
    }

    /// <summary>Makes a new key and puts the change on record; the old private key is gone afterwards.</summary>
    public async Task<Outcome> ChangeAsync(
        SiteKeyForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        if (RoleRules.Require(actor, Role.Administrator) is { } refusal)
        {
            return Outcome.From([refusal]);
        }

        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        return proved.IsAccepted
            ? await ChangeProvedAsync(form.Reason, actor, cancellation)
            : proved;
    }

    private async Task<Outcome> ChangeProvedAsync(
        string? reason,
        Actor actor,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var at = clock.GetUtcNow();
        var inUse = await db.SigningKeys.SingleAsync(k => k.Until == null, cancellation);
        var retired = inUse.Retire(reason, actor, at);
        if (!retired.IsAccepted)
        {
            return retired;
        }

        var next = folder.PrepareNext();
        db.Add(SigningKey.TakeIntoUse(next, actor, at, reason));
        var saved = await db.SaveAsync(cancellation);
        if (saved.IsAccepted)
        {
            folder.Take(next.Fingerprint);
        }

        return saved;
    }
}
