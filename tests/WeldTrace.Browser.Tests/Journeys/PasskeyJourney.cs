using Microsoft.Playwright;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>An administrator whose device keeps a passkey: added, used to sign in, and used to sign.</summary>
internal static class PasskeyJourney
{
    public static async Task WalkAsync(Visitor visitor, string name, string password)
    {
        await AddDeviceAsync(visitor.Page);
        await visitor.GoToAsync("/sign-in");
        await visitor.SignInAsync(name, password);
        await visitor.SeesAsync("My work");

        await visitor.GoToAsync("/me/passkeys");
        await visitor.FillAsync("Device that will keep it", "Key in the office");
        await visitor.FillAsync("Your password", "not the password");
        await visitor.PressAsync("Add a passkey");
        await visitor.SeesAsync("Your password is not right");
        await visitor.FillAsync("Device that will keep it", "Key in the office");
        await visitor.FillAsync("Your password", password);
        await visitor.PressAsync("Add a passkey");
        await visitor.SeesAsync("Key in the office, since");
        await visitor.FindsAccessibleAsync();

        await visitor.PressAsync("Sign out");
        await visitor.PressAsync("Sign in with a passkey");
        await visitor.SeesAsync("My work");

        await visitor.GoToAsync("/site/key");
        await visitor.FillAsync("Why", "Changed each spring");
        await visitor.PressAsync("Sign with a passkey instead of the password");
        await visitor.Page.Locator("tbody tr").Nth(1).WaitForAsync();
    }

    // The virtual authenticator of the browser: it keeps keys, and says yes as if a finger lay on it.
    private static async Task AddDeviceAsync(IPage page)
    {
        var browser = await page.Context.NewCDPSessionAsync(page);
        await browser.SendAsync("WebAuthn.enable");
        await browser.SendAsync(
            "WebAuthn.addVirtualAuthenticator",
            new Dictionary<string, object>
            {
                ["options"] = new Dictionary<string, object>
                {
                    ["protocol"] = "ctap2",
                    ["transport"] = "internal",
                    ["hasResidentKey"] = true,
                    ["hasUserVerification"] = true,
                    ["isUserVerified"] = true,
                    ["automaticPresenceSimulation"] = true,
                },
            }
        );
    }
}
