using Microsoft.AspNetCore.Identity;
using WeldTrace.Domain.People;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Security;

/// <summary>Makes the account of a person, to be saved together with the person's record.</summary>
public sealed class NewAccount(IPasswordHasher<Account> hasher, ILookupNormalizer names)
{
    private const int StampBytes = 20;

    /// <summary>Makes the account; the password has been checked before.</summary>
    public Account For(Person person, string password, bool mustChangePassword)
    {
        var account = WithoutPasswordFor(person);
        account.MustChangePassword = mustChangePassword;
        account.PasswordHash = hasher.HashPassword(account, password);
        return account;
    }

    /// <summary>Makes an account that nobody can sign in to until a first password is set, which its owner must then change.</summary>
    public Account WithoutPasswordFor(Person person)
    {
        ArgumentNullException.ThrowIfNull(person);
        return new Account
        {
            Id = Guid.CreateVersion7(),
            PersonId = person.Id,
            UserName = person.SignInName,
            NormalizedUserName = names.NormalizeName(person.SignInName),
            MustChangePassword = true,
            SecurityStamp = Stamp(),
        };
    }

    /// <summary>A new security stamp; tickets with another are worth nothing.</summary>
    public static string Stamp() =>
        Convert.ToHexStringLower(
            System.Security.Cryptography.RandomNumberGenerator.GetBytes(StampBytes)
        );
}
