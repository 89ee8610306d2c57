using System.Security.Claims;
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
    IDbContextFactory<WeldTraceDbContext> contexts
) : UserClaimsPrincipalFactory<Account>(accounts, options)
{
    public const string PersonId = "person";
    public const string PersonVersion = "person-version";
    public const string MustChangePassword = "must-change-password";

    /// <summary>Whether a second factor is set up.</summary>
    public const string SecondFactor = "second-factor";

    /// <summary>Whether there is a passkey to sign with.</summary>
    public const string Passkey = "passkey";

    /// <summary>The <see cref="AccountSession"/>.</summary>
    public const string Session = "session";

    /// <summary>Whether a PIN began the session.</summary>
    public const string ByPin = "by-pin";

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
}
