using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using WeldTrace.Web.Demo;

// The newer mode finishes each run in a blank page of its own, which never answers in this browser.
#pragma warning disable CS0618

namespace WeldTrace.Browser.Tests;

/// <summary>No page has a violation that axe can find at WCAG 2.2 AA.</summary>
public sealed class AccessibilityTests(SiteFixture site)
{
    private const int MostPages = 30;
    private static readonly string[] Tags =
    [
        "wcag2a",
        "wcag2aa",
        "wcag21a",
        "wcag21aa",
        "wcag22aa",
    ];

    // What one role has seen need not be scanned for the next; each begins with its own work.
    private static readonly System.Collections.Concurrent.ConcurrentDictionary<
        string,
        bool
    > Scanned = new();

    public static TheoryData<string> Roles => [.. DemoPeople.All.Select(p => p.SignInName)];

    [Theory]
    [MemberData(nameof(Roles))]
    public async Task EveryPage_OfARole_HasNoViolation(string signInName)
    {
        await using var visitor = await Visitor.SignInAsync(
            site,
            DemoPeople.All.Single(p => p.SignInName == signInName)
        );
        Queue<string> waiting = new(["/"]);
        List<string> violations = [];
        for (var scanned = 0; waiting.Count > 0 && scanned < MostPages; scanned++)
        {
            var path = waiting.Dequeue();
            var response = await visitor.GoToAsync(path);
            Assert.True(response is { Status: < 500 }, $"{path} answered {response?.Status}");
            var result = await visitor
                .Page.Locator("html")
                .RunAxeLegacy(
                    new AxeRunOptions
                    {
                        RunOnly = new() { Type = "tag", Values = [.. Tags] },
                    }
                );
            violations.AddRange(
                result.Violations.Select(v =>
                    $"{path}: {v.Id}: {string.Join(" | ", v.Nodes.Select(n => n.Html))}"
                )
            );
            foreach (var link in await LinksAsync(visitor))
            {
                if (Scanned.TryAdd(Shape(link), true))
                {
                    waiting.Enqueue(link);
                }
            }
        }

        Assert.Empty(violations);
    }

    [Theory]
    [InlineData("/sign-in", "Sign in")]
    public async Task SignIn_WithFaults_HasNoViolation(string path, string button)
    {
        await using var context = await site.Browser.NewContextAsync();
        var page = await context.NewPageAsync();
        await page.GotoAsync(new Uri(site.Address, path).AbsoluteUri);
        await page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = button })
            .ClickAsync();
        await page.GetByRole(Microsoft.Playwright.AriaRole.Alert).WaitForAsync();

        var result = await page.Locator("html")
            .RunAxeLegacy(
                new AxeRunOptions
                {
                    RunOnly = new() { Type = "tag", Values = [.. Tags] },
                }
            );

        Assert.Empty(result.Violations.Select(v => v.Id));
    }

    private static async Task<IReadOnlyList<string>> LinksAsync(Visitor visitor)
    {
        var links = await visitor.Page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('main a[href], nav a[href]')].map(a => new URL(a.href)).filter(u => u.origin === location.origin).map(u => u.pathname)"
        );
        return [.. links.Where(l => !Path.HasExtension(l)).Distinct()];
    }

    // One vessel's page looks like another's: pages that differ only in a serial, number or identity are scanned once.
    private static string Shape(string path) =>
        string.Join('/', path.Split('/').Select(part => part.Any(char.IsDigit) ? "#" : part));
}
