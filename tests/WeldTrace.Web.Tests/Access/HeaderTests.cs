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
    [InlineData("http", "", false)]
    [InlineData("https", "__Host-", true)]
    public async Task Cookies_AreForTheServerAndThisHostOnly_AndForHttpsWhereItIsUsed(
        string scheme,
        string prefix,
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

        Assert.Equal(
            [prefix + "weld-forms", prefix + "weld-records"],
            cookies.Select(c => c.Split('=')[0]).Distinct().Order(StringComparer.Ordinal)
        );
        Assert.All(
            cookies,
            c =>
            {
                Assert.Contains("httponly", c, StringComparison.OrdinalIgnoreCase);
                Assert.Contains("samesite=strict", c, StringComparison.OrdinalIgnoreCase);
                // RFC 6265bis 4.1.3.2: a browser takes the prefix only with this path, and for no domain.
                Assert.Contains("; path=/;", c, StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotContain("domain=", c, StringComparison.OrdinalIgnoreCase);
                Assert.Equal(isSecure, c.Contains("; secure", StringComparison.OrdinalIgnoreCase));
            }
        );
    }

    /// <summary>A year, and for all below the host: OWASP ASVS 5.0, 3.4.1. Over plain HTTP browsers heed no such word (RFC 6797 8.1).</summary>
    [Theory]
    [InlineData("http", "none")]
    [InlineData("https", "max-age=31536000; includeSubDomains")]
    public async Task Answer_OverHttps_TellsToComeOverHttpsOnly(string scheme, string expected)
    {
        using var visit = new SiteVisit(site.Address) { Scheme = scheme };

        foreach (var path in new[] { Routes.SignIn, "/app.css", "/nothing-here" })
        {
            Assert.Equal(expected, Header(await visit.GetAsync(path), "Strict-Transport-Security"));
        }
    }

    private static IEnumerable<string> Cookies(HttpResponseMessage answer) =>
        answer.Headers.TryGetValues("Set-Cookie", out var cookies) ? cookies : [];

    private static string Header(HttpResponseMessage answer, string name) =>
        answer.Headers.TryGetValues(name, out var values) ? string.Join("; ", values) : "none";
}
