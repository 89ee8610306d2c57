using Microsoft.AspNetCore.Identity;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Security;

/// <summary>
/// Passwords by NIST SP 800-63B-4: fifteen characters or more as the only factor, any character, no composition rule, no
/// routine expiry, and a blocklist that says why.
/// </summary>
public sealed class PasswordRules : IPasswordValidator<Account>
{
    public const int Shortest = 15;
    public const int Longest = 256;

    private const int FewestDifferentCharacters = 5;

    // Long and well-known, or the name of the program: refused wherever they stand.
    private static readonly string[] Known =
    [
        "weldtrace",
        "correcthorsebatterystaple",
        "passwordpassword",
    ];

    private static readonly string[] Rows =
    [
        "abcdefghijklmnopqrstuvwxyz",
        "01234567890123456789",
        "qwertyuiopasdfghjklzxcvbnm",
        "1q2w3e4r5t6y7u8i9o0p",
    ];

    public Task<IdentityResult> ValidateAsync(
        UserManager<Account> manager,
        Account user,
        string? password
    )
    {
        ArgumentNullException.ThrowIfNull(user);
        var fault = FaultOf(password ?? "", user.UserName ?? "");
        return Task.FromResult(
            fault is null
                ? IdentityResult.Success
                : IdentityResult.Failed(
                    new IdentityError { Code = "password", Description = fault }
                )
        );
    }

    /// <summary>What is wrong with a password; null when nothing is.</summary>
    public static string? FaultOf(string password, string signInName)
    {
        ArgumentNullException.ThrowIfNull(password);
        ArgumentNullException.ThrowIfNull(signInName);
        var runes = password.EnumerateRunes().Count();
        var plain = new string([.. password.Where(char.IsLetterOrDigit)]).ToLowerInvariant();
        return runes < Shortest
                ? $"The password has {runes} characters; use {Shortest} or more. Several words in a row are easy to remember."
            : runes > Longest ? $"The password is longer than {Longest} characters; shorten it."
            : password.Distinct().Count() < FewestDifferentCharacters
                ? "The password repeats very few characters, so it is guessed at once; vary it."
            : signInName.Length > 2
            && plain.Contains(signInName, StringComparison.OrdinalIgnoreCase)
                ? "The password contains the sign-in name, so it is guessed early; leave it out."
            : Known.Any(c => plain.Contains(c, StringComparison.Ordinal))
            || CommonPassword.IsAllOf(plain)
                ? "The password comes down to one that is tried first; choose another. Several words in a row are good."
            : Rows.Any(row => IsRow(plain, row))
                ? "The password is a row of the keyboard or alphabet, so it is guessed early; choose another."
            : null;
    }

    private static bool IsRow(string plain, string row) =>
        plain.Length >= 10 && (row + row + row).Contains(plain, StringComparison.Ordinal);
}
