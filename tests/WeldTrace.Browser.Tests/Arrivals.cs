using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace WeldTrace.Browser.Tests;

/// <summary>
/// Waiting for another page by asking for its address again and again: on a busy machine the browser's own event that a page
/// has loaded was missed now and then.
/// </summary>
internal static class Arrivals
{
    private const float Patience = 60_000;

    /// <param name="page">Page.</param>
    /// <param name="address">Address; ** stands for anything, * for anything but a slash.</param>
    public static async Task ArrivesAtAsync(this IPage page, string address)
    {
        await Expect(page).ToHaveURLAsync(Pattern(address), new() { Timeout = Patience });
        await IsWholeAsync(page);
    }

    /// <summary>The same for any other page than this one.</summary>
    public static async Task LeavesAsync(this IPage page, string address)
    {
        await Expect(page).Not.ToHaveURLAsync(Pattern(address), new() { Timeout = Patience });
        await IsWholeAsync(page);
    }

    // The last thing of each page.
    private static Task IsWholeAsync(IPage page) =>
        page.Locator("footer")
            .First.WaitForAsync(
                new() { State = WaitForSelectorState.Attached, Timeout = Patience }
            );

    private static Regex Pattern(string address) =>
        new(
            "^"
                + Regex
                    .Escape(address)
                    .Replace(@"\*\*", ".*", StringComparison.Ordinal)
                    .Replace(@"\*", "[^/]*", StringComparison.Ordinal)
                + "$"
        );
}
