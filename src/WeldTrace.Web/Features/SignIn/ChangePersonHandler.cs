using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Access;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.SignIn;

public sealed class ChangePersonForm
{
    /// <summary>Word of a badge, sign-in name, or the account of somebody who has a PIN here.</summary>
    public string? Who { get; set; }

    /// <summary>PIN or password.</summary>
    public string? Secret { get; set; }

    /// <summary>Code of the second factor, with a password.</summary>
    public string? Code { get; set; }
}

/// <summary>Somebody who has a PIN on a tablet.</summary>
/// <param name="Id">What stands for them in the form.</param>
/// <param name="PrintedName">Printed name.</param>
public sealed record TabletPerson(string Id, string PrintedName);

/// <summary>Lets one person after the other take over a shared tablet, each under their own name.</summary>
public sealed class ChangePersonHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    Entrance entrance,
    UserManager<Account> accounts,
    PasswordCheck passwords,
    PinCheck pins,
    TabletCookie tablets
)
{
    private static readonly Refusal Wrong = new(
        "password",
        "That is not right. Check whose name or badge it is, then give the PIN of this tablet, or the password.",
        nameof(ChangePersonForm.Secret)
    );

    /// <summary>The tablet that asks; null when the device is none, or none any more, which it then forgets.</summary>
    public async Task<SharedTablet?> TabletAsync(CancellationToken cancellation)
    {
        var tablet = await tablets.FindAsync(cancellation);
        if (tablet is null && tablets.SaysSo)
        {
            tablets.Forget();
        }

        return tablet;
    }

    /// <summary>Active people who have a PIN on a tablet, by name.</summary>
    public async Task<IReadOnlyList<TabletPerson>> ListAsync(
        SharedTablet tablet,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(tablet);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .AccountPins.Where(p => p.TabletId == tablet.Id)
            .Join(db.Users, p => p.AccountId, a => a.Id, (_, a) => a)
            .Join(
                db.People.Where(p => p.IsActive),
                a => a.PersonId,
                p => p.Id,
                (a, p) => new { a.Id, p.PrintedName }
            )
            .OrderBy(p => p.PrintedName)
            .Select(p => new TabletPerson(p.Id.ToString(), p.PrintedName))
            .ToListAsync(cancellation);
    }

    /// <summary>
    /// The name to show while the PIN is asked for: the printed one of a badge, and of a typed name what was typed, so that nobody
    /// learns which names there are. Null when nothing was scanned or typed, or the badge is none.
    /// </summary>
    public async Task<string?> NameAsync(
        ChangePersonForm form,
        SharedTablet tablet,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(tablet);
        var who = form.Who?.Trim() ?? "";
        if (who.Length is 0 or > Person.LongestName)
        {
            return null;
        }

        if (!BadgeWord.IsOne(who) && !Guid.TryParse(who, out _))
        {
            return who;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await FindAsync(db, who, tablet, cancellation) is { } account
            ? (await db.People.SingleAsync(p => p.Id == account.PersonId, cancellation)).PrintedName
            : null;
    }

    /// <summary>Ends the session of whoever used the tablet, and begins one of whoever proves who they are.</summary>
    public async Task<Outcome> EnterAsync(
        ChangePersonForm form,
        SharedTablet tablet,
        HttpContext http
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(tablet);
        ArgumentNullException.ThrowIfNull(http);
        var outcome = await entrance.EnterAsync(
            http,
            nameof(form.Secret),
            () => ProveAsync(form, tablet, http.RequestAborted)
        );
        if (outcome.IsAccepted)
        {
            tablets.KeepOn();
        }

        return outcome;
    }

    private async Task<Proof> ProveAsync(
        ChangePersonForm form,
        SharedTablet tablet,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var found = await FindAsync(db, form.Who?.Trim() ?? "", tablet, cancellation);
        // Of the store that counts wrong passwords.
        var account = found is null ? null : await accounts.FindByIdAsync(found.Id.ToString());
        var secret = form.Secret ?? "";
        if (PinRules.HasForm(secret))
        {
            var proved = await pins.CheckAsync(account, tablet, secret, Wrong, cancellation);
            return new Proof(proved, account, SignInWay.Pin);
        }

        var outcome = await passwords.CheckAsync(
            account,
            secret,
            Wrong.Sentence,
            new TypedCode(form.Code, nameof(form.Code))
        );
        return new Proof(
            Outcome.From([
                .. outcome.Refusals.Select(r =>
                    r.Field == nameof(form.Code) ? r : r with { Field = nameof(form.Secret) }
                ),
            ]),
            account,
            SignInWay.Password
        );
    }

    private async Task<Account?> FindAsync(
        WeldTraceDbContext db,
        string who,
        SharedTablet tablet,
        CancellationToken cancellation
    )
    {
        var name = accounts.NormalizeName(who);
        var badge = BadgeWord.IsOne(who) ? TokenWord.HashOf(who) : null;
        _ = Guid.TryParse(who, out var chosen);
        return await db
            .Users.AsNoTracking()
            .Where(a => db.People.Any(p => p.Id == a.PersonId && p.IsActive))
            .SingleOrDefaultAsync(
                a =>
                    badge != null ? a.BadgeSha256 == badge
                    : chosen != Guid.Empty
                        ? a.Id == chosen
                            && db.AccountPins.Any(p =>
                                p.AccountId == chosen && p.TabletId == tablet.Id
                            )
                    : a.NormalizedUserName == name,
                cancellation
            );
    }
}
