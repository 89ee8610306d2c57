using System.Net;
using WeldTrace.Web.Demo;

namespace WeldTrace.Web.Tests.Access;

/// <summary>
/// What every answer tells the browser to refuse, and how its cookies are marked: OWASP ASVS 5.0 chapter 3 (web frontend
/// security) asks for each of these.
/// </summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class HeaderTests(DemoSite site)
{
    [Theory]
    [InlineData(Routes.SignIn, HttpStatusCode.OK)]
    [InlineData(Routes.Home, HttpStatusCode.OK)]
    [InlineData(Routes.NewPerson, HttpStatusCode.Redirect)]
    [InlineData("/vessels/NR10-9999", HttpStatusCode.NotFound)]
    [InlineData("/nothing-here", HttpStatusCode.NotFound)]
    [InlineData("/vessels.csv", HttpStatusCode.OK)]
    [InlineData("/vessels/NR10-0001/traveler.pdf", HttpStatusCode.OK)]
    [InlineData("/app.css", HttpStatusCode.OK)]
    public async Task Answer_OfAnyKind_CarriesThem(string path, HttpStatusCode expected)
    {
        var auditor = await site.VisitAsync(DemoPeople.Auditor);

        var answer = await auditor.GetAsync(path);

        Assert.Equal(expected, answer.StatusCode);
        Assert.Equal("nosniff", Header(answer, "X-Content-Type-Options"));
        Assert.Equal("same-origin", Header(answer, "Referrer-Policy"));
        Assert.Equal("same-origin", Header(answer, "Cross-Origin-Opener-Policy"));
        Assert.Contains(
            "camera=()",
            Header(answer, "Permissions-Policy"),
            StringComparison.Ordinal
        );
        var policy = Header(answer, "Content-Security-Policy");
        Assert.All(
            [
                "default-src 'self'",
                "object-src 'none'",
                "base-uri 'self'",
                "frame-ancestors 'none'",
            ],
            part => Assert.Contains(part, policy, StringComparison.Ordinal)
        );
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
    }

    /// <summary>What is behind the sign-in is in no cache that another person may read after signing out.</summary>
    [Theory]
    [InlineData("/vessels/NR10-0001")]
    [InlineData("/vessels.csv")]
    [InlineData("/vessels/NR10-0001/traveler.pdf")]
    [InlineData("/vessels/NR10-0001/history.zip")]
    [InlineData("/people")]
    public async Task Answer_BehindTheSignIn_IsNotStored(string path)
    {
        var auditor = await site.VisitAsync(DemoPeople.Auditor);

        var answer = await auditor.GetAsync(path);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.True(answer.Headers.CacheControl?.NoStore, $"{answer.Headers.CacheControl}");
    }

    [Theory]
    [InlineData("http", false)]
    [InlineData("https", true)]
    public async Task Cookies_AreForTheServerAndThisSiteOnly_AndForHttpsWhereItIsUsed(
        string scheme,
        bool isSecure
    )
    {
        using var visit = new SiteVisit(site.Address) { Scheme = scheme };
        var page = await visit.GetAsync(Routes.SignIn);
        // The proxy speaks plain HTTP to the site, and so does this client.
        visit.Cookies.GetAllCookies().ToList().ForEach(c => c.Secure = false);
        var signedIn = await visit.PostAsync(
            Routes.SignIn,
            "sign-in",
            [new("In.Name", DemoPeople.Auditor.SignInName), new("In.Password", DemoPeople.Password)]
        );

        var cookies = Cookies(page).Concat(Cookies(signedIn)).ToList();

        Assert.Contains(cookies, c => c.StartsWith("weld-records=", StringComparison.Ordinal));
        Assert.Contains(cookies, c => c.Contains("Antiforgery", StringComparison.Ordinal));
        Assert.All(
            cookies,
            c =>
            {
                Assert.Contains("httponly", c, StringComparison.OrdinalIgnoreCase);
                Assert.Contains("samesite=strict", c, StringComparison.OrdinalIgnoreCase);
                Assert.Equal(isSecure, c.Contains("; secure", StringComparison.OrdinalIgnoreCase));
            }
        );
    }

    private static IEnumerable<string> Cookies(HttpResponseMessage answer) =>
        answer.Headers.TryGetValues("Set-Cookie", out var cookies) ? cookies : [];

    private static string Header(HttpResponseMessage answer, string name) =>
        answer.Headers.TryGetValues(name, out var values) ? string.Join("; ", values) : "none";
}
