using Microsoft.AspNetCore.Identity;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Security;

/// <summary>
/// Passkeys (WebAuthn): possession of the device and the finger, face or PIN by which it is unlocked, two factors in one, bound to the
/// host name of the site.
/// </summary>
public static class Passkeys
{
    /// <summary>Where the browser is told how to make one.</summary>
    public const string Creation = Routes.Passkeys + "/new";

    /// <summary>Where whoever is signed in gets a challenge.</summary>
    public const string Challenge = Routes.Passkeys + "/challenge";

    /// <summary>Where a visitor gets one, to sign in.</summary>
    public const string SignInChallenge = "/sign-in/challenge";

    /// <summary>Longest answer of a browser that is looked at.</summary>
    private const int LongestCredential = 64 * 1024;

    /// <summary>The account whose passkey answered the challenge given out before; null when it proves nothing.</summary>
    public static async Task<Account?> ProveAsync(
        this SignInManager<Account> signIn,
        string? credential
    )
    {
        ArgumentNullException.ThrowIfNull(signIn);
        if (credential is null or { Length: 0 or > LongestCredential })
        {
            return null;
        }

        try
        {
            var proved = await signIn.PerformPasskeyAssertionAsync(credential);
            if (!proved.Succeeded)
            {
                return null;
            }

            // It counts its uses, by which a copy is found.
            await signIn.UserManager.AddOrUpdatePasskeyAsync(proved.User, proved.Passkey);
            return proved.User;
        }
        catch (InvalidOperationException)
        {
            // No challenge was given out, or it was answered already.
            return null;
        }
    }
}
