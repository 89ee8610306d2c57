using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace WeldTrace.Browser.Tests;

/// <summary>Pages have no violation that axe can find at WCAG 2.2 AA.</summary>
public sealed class AccessibilityTests(SiteFixture site)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private static readonly List<string> Tags =
    [
        "wcag2a",
        "wcag2aa",
        "wcag21a",
        "wcag21aa",
        "wcag22aa",
    ];

    [Fact]
    public async Task SignIn_WithFaults_HasNoViolation()
    {
        await using var context = await site.Browser.NewContextAsync();
        var page = await context.NewPageAsync();
        await page.GotoAsync(new Uri(site.Address, "/sign-in").AbsoluteUri);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await page.GetByRole(AriaRole.Alert).WaitForAsync();

        var result = await page.RunAxe(
                new AxeRunOptions
                {
                    RunOnly = new() { Type = "tag", Values = Tags },
                }
            )
            .WaitAsync(Patience, TestContext.Current.CancellationToken);

        Assert.Empty(result.Violations.Select(v => v.Id));
    }
}
