using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;
using Microsoft.Playwright;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Accessibility;

/// <summary>No page has a violation that axe can find at WCAG 2.2 AA, whoever looks at it.</summary>
public sealed partial class AccessibilityTests(SiteFixture site)
{
    // These need a run under way, a brought file, an accepted vessel or an empty site; the journeys scan them on their way.
    private static readonly string[] ScannedOnJourneys =
    [
        "/first-run",
        "/me/password",
        "/runs/*/end",
        "/runs/*/interrupt",
        "/runs/*/log",
        "/runs/*/log/*",
        "/runs/*/sign",
        "/vessels/*/ship",
    ];

    // Shown in place of another page, never linked to.
    private static readonly string[] ScannedHere = ["/failure", "/not-allowed", "/not-found"];

    [Fact]
    public async Task EveryPage_OfEveryRole_HasNoViolation()
    {
        HashSet<string> reached = [.. ScannedOnJourneys, .. ScannedHere];
        List<string> violations = [];
        foreach (var person in DemoPeople.All)
        {
            await using var visitor = await Visitor.SignInAsync(site, person);
            var crawl = new Crawl(visitor);
            await crawl.RunAsync();
            reached.UnionWith(crawl.Shapes.Keys);
            violations.AddRange(crawl.Violations.Select(v => $"{person.SignInName}: {v}"));
        }

        Assert.Empty(violations);
        Assert.Empty(Pages().Except(reached));
    }

    [Fact]
    public async Task SignIn_WithFaults_HasNoViolation()
    {
        await using var context = await site.Browser.NewContextAsync();
        var page = await context.NewPageAsync();
        await page.GotoAsync(new Uri(site.Address, "/sign-in").AbsoluteUri);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await page.GetByRole(AriaRole.Alert).WaitForAsync();

        Assert.Empty(await AxeScan.ViolationsAsync(page));
    }

    [Theory]
    [InlineData("/vessels/NR10-9999")]
    [InlineData("/nothing-here")]
    [InlineData("/people/new")]
    [InlineData("/vessels/NR10-0001/ship")]
    [InlineData("/failure")]
    public async Task PageInPlaceOfAnother_HasNoViolation(string path)
    {
        await using var visitor = await Visitor.SignInAsync(site, DemoPeople.Auditor);
        await visitor.GoToAsync(path);

        Assert.Empty(await AxeScan.ViolationsAsync(visitor.Page));
    }

    private static IEnumerable<string> Pages() =>
        typeof(Program)
            .Assembly.GetTypes()
            .SelectMany(t => t.GetCustomAttributes<RouteAttribute>())
            .Select(r => Parameter().Replace(r.Template, "*"))
            .Where(t => t != "/sign-in");

    [GeneratedRegex(@"\{[^}]+\}")]
    private static partial Regex Parameter();
}
