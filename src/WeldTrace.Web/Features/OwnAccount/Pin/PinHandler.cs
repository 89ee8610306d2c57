using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Access;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.OwnAccount.Pin;

public sealed class PinForm
{
    public string? Password { get; set; }

    public string? Code { get; set; }

    public string? New { get; set; }

    public string? Again { get; set; }
}

public sealed class ErasePinForm
{
    /// <summary>Tablet.</summary>
    public Guid Id { get; set; }
}

/// <summary>Sets and erases one's own PIN on shared tablets.</summary>
public sealed class PinHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    OwnMeansHandler means,
    TabletCookie tablets,
    IPasswordHasher<Account> hasher,
    TimeProvider clock
)
{
    /// <summary>The account of whoever asks.</summary>
    public Task<Account> AccountAsync(HttpContext http) => means.AccountAsync(http);

    /// <summary>The shared tablet that asks; null when the device is none.</summary>
    public Task<SharedTablet?> TabletAsync(CancellationToken cancellation) =>
        tablets.FindAsync(cancellation);

    /// <summary>Tablets on which somebody has a PIN, by name.</summary>
    public async Task<IReadOnlyList<SharedTablet>> ListAsync(
        Account account,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(account);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .SharedTablets.AsNoTracking()
            .Where(t => db.AccountPins.Any(p => p.AccountId == account.Id && p.TabletId == t.Id))
            .OrderBy(t => t.Name)
            .ToListAsync(cancellation);
    }

    /// <summary>
    /// Sets a PIN on the tablet that asks, once whoever signed in there with a password or passkey has given the password again, and the
    /// code of a second factor that is set up: a PIN then stands for both, on that tablet only.
    /// </summary>
    public async Task<Outcome> SetAsync(
        PinForm form,
        HttpContext http,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(http);
        if (await tablets.FindAsync(cancellation) is not { } tablet)
        {
            return Outcome.Refused("tablet", "This device is not registered as a shared tablet.");
        }

        if (http.User.HasClaim(AccountClaims.ByPin, "true"))
        {
            return Outcome.Refused(
                "session",
                "You signed in with a PIN; sign in on this tablet with your password first."
            );
        }

        if (FaultOf(form) is { } fault)
        {
            return Outcome.From([fault]);
        }

        var account = await means.AccountAsync(http);
        var proved = await means.ProveAsync(
            account,
            form.Password,
            new TypedCode(form.Code, nameof(form.Code))
        );
        return !proved.IsAccepted
            ? proved
            : await means.ChangeAsync(
                account,
                SignInMeans.PinSet,
                tablet.Name,
                (db, kept) => PutAsync(db, kept, tablet, form.New!, cancellation),
                cancellation
            );
    }

    /// <summary>Erases the PIN on a tablet, which need not be at hand.</summary>
    public async Task<Outcome> EraseAsync(
        ErasePinForm form,
        HttpContext http,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var account = await means.AccountAsync(http);
        var tablet = (await ListAsync(account, cancellation)).FirstOrDefault(t => t.Id == form.Id);
        return tablet is null
            ? Outcome.Refused("missing", "You have no PIN there; load the page anew.")
            : await means.ChangeAsync(
                account,
                SignInMeans.PinErased,
                tablet.Name,
                async (db, kept) =>
                    db.AccountPins.RemoveRange(
                        await db
                            .AccountPins.Where(p =>
                                p.AccountId == kept.Id && p.TabletId == tablet.Id
                            )
                            .ToListAsync(cancellation)
                    ),
                cancellation
            );
    }

    private static Refusal? FaultOf(PinForm form) =>
        PinRules.FaultOf(form.New ?? "") is { } fault ? new("pin", fault, nameof(form.New))
        : form.Again != form.New
            ? new("again", "The two are not the same; type the PIN again.", nameof(form.Again))
        : null;

    private async Task PutAsync(
        WeldTraceDbContext db,
        Account account,
        SharedTablet tablet,
        string pin,
        CancellationToken cancellation
    )
    {
        var hash = hasher.HashPassword(account, pin);
        var now = clock.GetUtcNow();
        var kept = await db.AccountPins.SingleOrDefaultAsync(
            p => p.AccountId == account.Id && p.TabletId == tablet.Id,
            cancellation
        );
        if (kept is null)
        {
            db.Add(
                new AccountPin
                {
                    AccountId = account.Id,
                    TabletId = tablet.Id,
                    PinHash = hash,
                    SetAt = now,
                }
            );
            return;
        }

        (kept.PinHash, kept.SetAt) = (hash, now);
        (kept.WrongInARow, kept.HeldUntil) = (0, null);
    }
}
