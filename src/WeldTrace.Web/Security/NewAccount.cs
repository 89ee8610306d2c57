using Microsoft.AspNetCore.Identity;
using WeldTrace.Domain.People;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Security;

/// <summary>Makes the account of a person, to be saved together with the person's record.</summary>
public sealed class NewAccount(IPasswordHasher<Account> hasher, ILookupNormalizer names)
{
    /// <summary>Makes the account; the password has been checked before.</summary>
    public Account For(Person person, string password, bool mustChangePassword)
    {
        ArgumentNullException.ThrowIfNull(person);
        var account = new Account
        {
            Id = Guid.CreateVersion7(),
            PersonId = person.Id,
            UserName = person.SignInName,
            NormalizedUserName = names.NormalizeName(person.SignInName),
            MustChangePassword = mustChangePassword,
            SecurityStamp = Convert.ToHexStringLower(
                System.Security.Cryptography.RandomNumberGenerator.GetBytes(20)
            ),
        };
        account.PasswordHash = hasher.HashPassword(account, password);
        return account;
    }
}
