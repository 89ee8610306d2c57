using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace WeldTrace.Browser.Tests.Accessibility;

/// <summary>Runs axe-core in a page as it stands, without the blank page and the frames that the packaged runner opens beside it.</summary>
internal static class AxeScan
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    private const string Run = """
        async () => {
          const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
          const found = await axe.run(document, { runOnly: { type: 'tag', values: tags }, resultTypes: ['violations'] });
          if (found.passes.length === 0) { return ['axe checked nothing']; }
          return found.violations.flatMap(v => v.nodes.map(n => v.id + ': ' + n.html.slice(0, 300) + ' ' + (n.failureSummary || '')));
        }
        """;

    /// <summary>Everything in the page that breaks WCAG 2.2 A or AA, as far as axe can tell.</summary>
    /// <exception cref="TimeoutException">The page did not answer; the message names it.</exception>
    public static async Task<IReadOnlyList<string>> ViolationsAsync(IPage page)
    {
        try
        {
            await page.EvaluateAsync(Script).WaitAsync(Patience);
            return await page.EvaluateAsync<string[]>(Run).WaitAsync(Patience);
        }
        catch (TimeoutException silence)
        {
            throw new TimeoutException($"axe got no answer from {page.Url}.", silence);
        }
    }
}
