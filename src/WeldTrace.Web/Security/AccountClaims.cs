using System.Security.Claims;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Security;

/// <summary>Turns an account into claims: the person, the printed name and the roles, as the person's record says now.</summary>
public sealed class AccountClaims(
    UserManager<Account> accounts,
    IOptions<IdentityOptions> options,
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
) : UserClaimsPrincipalFactory<Account>(accounts, options)
{
    public const string PersonId = "person";
    public const string PersonVersion = "person-version";
    public const string MustChangePassword = "must-change-password";

    /// <summary>Whether a second factor is set up.</summary>
    public const string SecondFactor = "second-factor";

    /// <summary>Whether there is a passkey to sign with.</summary>
    public const string Passkey = "passkey";

    /// <summary>One sign-in, until it ends.</summary>
    public const string Session = "session";

    private const string SignedInAt = "signed-in-at";

    /// <summary>After so long everybody signs in again, busy or not (NIST SP 800-63B 4.2.3).</summary>
    internal static readonly TimeSpan LongestSession = TimeSpan.FromHours(12);

    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(Account user)
    {
        ArgumentNullException.ThrowIfNull(user);
        var identity = await base.GenerateClaimsAsync(user);
        await using var db = await contexts.CreateDbContextAsync();
        var person = await db.People.AsNoTracking().SingleAsync(p => p.Id == user.PersonId);
        identity.AddClaim(new Claim(PersonId, person.Id.ToString("D")));
        identity.AddClaim(
            new Claim(
                PersonVersion,
                person.Version.ToString(System.Globalization.CultureInfo.InvariantCulture)
            )
        );
        identity.AddClaim(new Claim(ClaimTypes.GivenName, person.PrintedName));
        identity.AddClaims(
            person.Roles.Select(role => new Claim(identity.RoleClaimType, role.ToString()))
        );
        identity.AddClaim(new Claim(Session, RandomNumberGenerator.GetHexString(32)));
        identity.AddClaim(SignIn(clock.GetUtcNow()));
        if (user.TwoFactorEnabled)
        {
            identity.AddClaim(new Claim(SecondFactor, "true"));
        }

        if (await db.UserPasskeys.AnyAsync(p => p.UserId == user.Id))
        {
            identity.AddClaim(new Claim(Passkey, "true"));
        }

        if (user.MustChangePassword)
        {
            identity.AddClaim(new Claim(MustChangePassword, "true"));
        }

        return identity;
    }

    /// <summary>Ends the session of an inactive person at once, and takes over changed roles without a new sign-in.</summary>
    public static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var services = context.HttpContext.RequestServices;
        var contexts = services.GetRequiredService<IDbContextFactory<WeldTraceDbContext>>();
        await using var db = await contexts.CreateDbContextAsync(
            context.HttpContext.RequestAborted
        );
        _ = Guid.TryParse(context.Principal?.FindFirstValue(PersonId), out var personId);
        var current = await db
            .People.AsNoTracking()
            .Where(p => p.Id == personId && p.IsActive)
            .Join(
                db.Users,
                p => p.Id,
                a => a.PersonId,
                (p, a) => new { p.Version, a.SecurityStamp }
            )
            .SingleOrDefaultAsync(context.HttpContext.RequestAborted);
        var stamp = context.Principal?.FindFirstValue(
            new ClaimsIdentityOptions().SecurityStampClaimType
        );
        if (
            current is null
            || current.SecurityStamp != stamp
            || HasLastedTooLong(
                context.Principal!,
                services.GetRequiredService<TimeProvider>().GetUtcNow()
            )
            || services
                .GetRequiredService<SessionBook>()
                .HasEnded(context.Principal!.FindFirstValue(Session) ?? "")
        )
        {
            context.RejectPrincipal();
            await services.GetRequiredService<SignInManager<Account>>().SignOutAsync();
            return;
        }

        if (
            context.Principal!.FindFirstValue(PersonVersion)
            != current.Version.ToString(System.Globalization.CultureInfo.InvariantCulture)
        )
        {
            var signIn = services.GetRequiredService<SignInManager<Account>>();
            if (await signIn.UserManager.GetUserAsync(context.Principal!) is { } account)
            {
                var changed = await signIn.CreateUserPrincipalAsync(account);
                Carry(context.Principal!, changed);
                context.ReplacePrincipal(changed);
                context.ShouldRenew = true;
            }
        }
    }

    /// <summary>The claim that somebody signed in at an instant.</summary>
    public static Claim SignIn(DateTimeOffset at) =>
        new(SignedInAt, at.ToString("O", System.Globalization.CultureInfo.InvariantCulture));

    /// <summary>Whether a sign-in is so long ago that it no longer counts, or says nothing of when it was.</summary>
    public static bool HasLastedTooLong(ClaimsPrincipal person, DateTimeOffset now) =>
        !DateTimeOffset.TryParseExact(
            person.FindFirstValue(SignedInAt),
            "O",
            System.Globalization.CultureInfo.InvariantCulture,
            System.Globalization.DateTimeStyles.None,
            out var at
        )
        || now - at > LongestSession;

    // A change of roles is no new sign-in: the session goes on, and ends when it would have ended.
    private static void Carry(ClaimsPrincipal from, ClaimsPrincipal to)
    {
        var identity = (ClaimsIdentity)to.Identity!;
        foreach (var type in (string[])[Session, SignedInAt])
        {
            identity.TryRemoveClaim(identity.FindFirst(type));
            identity.AddClaim(new Claim(type, from.FindFirstValue(type)!));
        }
    }
}
