using System.Net;
using WeldTrace.Web.Demo;

namespace WeldTrace.Web.Tests.Access;

/// <summary>
/// 21 CFR 11.200(a)(1), requirement R-091: the first signature since a sign-in takes name and password, later ones the password, and
/// after a new sign-in both again. Asked of the running site with the form that changes the key of the site's ledger, which anybody of its role may send again.
/// </summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class SigningSessionTests(DemoSite site)
{
    private const string NameField = "In.SignerName";
    private const string First = "first signature since you signed in";

    [Fact]
    public async Task Signature_AsksForTheNameOnce_AndAgainAfterANewSignIn()
    {
        using var visit = await OpenAsync();
        Assert.True(await AsksAsync(visit));
        Assert.Contains(First, await SendAsync(visit, name: null), StringComparison.Ordinal);
        Assert.Contains(
            "not the sign-in name",
            await SendAsync(visit, DemoPeople.Inspector.SignInName),
            StringComparison.Ordinal
        );
        Assert.True(await AsksAsync(visit));

        // Name and password together are good: what is refused now is the act alone, for its missing reason.
        var named = await SendAsync(visit, DemoPeople.Administrator.SignInName);
        Assert.DoesNotContain(First, named, StringComparison.Ordinal);
        Assert.False(await AsksAsync(visit));
        Assert.DoesNotContain(First, await SendAsync(visit, name: null), StringComparison.Ordinal);

        using var anew = await OpenAsync();
        Assert.True(await AsksAsync(anew));
        Assert.Contains(First, await SendAsync(anew, name: null), StringComparison.Ordinal);
    }

    [Fact]
    public async Task WrongPassword_WithTheRightName_BeginsNoSession()
    {
        using var visit = await OpenAsync();

        await SendAsync(visit, DemoPeople.Administrator.SignInName, "not the password at all");

        Assert.True(await AsksAsync(visit));
    }

    /// <summary>OWASP ASVS 5.0, V7.4: a ticket that somebody kept opens nothing after its owner signed out.</summary>
    [Fact]
    public async Task Ticket_KeptFromBeforeSigningOut_OpensNothing()
    {
        using var owner = await OpenAsync();
        using var thief = new SiteVisit(site.Address);
        thief.Cookies.Add(owner.Cookies.GetCookies(site.Address));
        Assert.Equal(HttpStatusCode.OK, (await thief.GetAsync(Routes.Me)).StatusCode);

        await owner.PostAsync(Routes.SignOut, form: null, []);

        var answer = await thief.GetAsync(Routes.Me);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Contains(
            Routes.SignIn,
            answer.Headers.Location!.OriginalString,
            StringComparison.Ordinal
        );
    }

    // A visit that names nobody by itself.
    private async Task<SiteVisit> OpenAsync()
    {
        var visit = new SiteVisit(site.Address);
        await visit.SignInAsync(
            DemoPeople.Administrator.SignInName,
            DemoPeople.Password,
            namesItself: true
        );
        return visit;
    }

    private static async Task<bool> AsksAsync(SiteVisit visit) =>
        (await SiteVisit.PageAsync(await visit.GetAsync(Routes.SiteKey))).QuerySelector(
            $"[name='{NameField}']"
        )
            is not null;

    private static async Task<string> SendAsync(
        SiteVisit visit,
        string? name,
        string password = DemoPeople.Password
    )
    {
        var answer = await visit.PostAsync(
            Routes.SiteKey,
            "key",
            [new("In.Reason", ""), new(NameField, name ?? ""), new("In.Password", password)]
        );
        return (await SiteVisit.PageAsync(answer)).Body!.TextContent;
    }
}
