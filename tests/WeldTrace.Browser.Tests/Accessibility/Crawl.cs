using System.Text.RegularExpressions;

namespace WeldTrace.Browser.Tests.Accessibility;

/// <summary>Follows every link that a person sees and scans one page of each kind.</summary>
/// <param name="visitor">The person.</param>
/// <param name="seen">How the pages were built that somebody saw before; one that is built in the same way is not scanned again.</param>
internal sealed partial class Crawl(Visitor visitor, HashSet<string> seen)
{
    private const int MostPages = 160;

    // A file of its own, such as a photograph, is no page; its sandbox answers no script.
    private const string Links = """
        () => [...document.querySelectorAll('a[href]:not([download]):not([data-enhance-nav=false])')]
          .filter(a => a.origin === location.origin && !a.pathname.startsWith('/attachments/'))
          .map(a => a.pathname + (a.pathname === location.pathname ? '' : a.search))
        """;

    // Elements with everything but their texts and identities, in order: what axe goes by.
    private const string Build = """
        () => [...document.querySelectorAll('*')].map(e => e.tagName
          + [...e.attributes].filter(a => !/^(id|for|href|value|d|x|y|x1|y1|x2|y2|cx|cy|points|nonce)$|labelledby|describedby|controls/.test(a.name))
            .map(a => ' ' + a.name + '=' + (/^(class|role|type|lang|scope|style|aria-hidden|tabindex)$/.test(a.name) ? a.value : a.value !== ''))
          + (e.firstChild && e.firstChild.nodeType === 3 && e.firstChild.data.trim() ? '+' : '')).join('\n')
        """;

    private readonly List<string> _violations = [];
    private readonly Dictionary<string, string> _shapes = [];

    public IReadOnlyList<string> Violations => _violations;

    /// <summary>Each kind of page with the first address of it.</summary>
    public IReadOnlyDictionary<string, string> Shapes => _shapes;

    public async Task RunAsync(params IReadOnlyList<string> alsoAt)
    {
        Queue<string> waiting = new();
        foreach (var path in alsoAt.Prepend("/"))
        {
            Find(path, waiting);
        }

        while (waiting.TryDequeue(out var path))
        {
            Assert.True(_shapes.Count < MostPages, "The crawl finds ever more pages.");
            var response = await visitor.GoToAsync(path);
            Assert.True(response is { Status: < 500 }, $"{path} answered {response?.Status}");
            var reached = Shape(new Uri(visitor.Page.Url).AbsolutePath);
            if (reached != Shape(path) && !_shapes.TryAdd(reached, path))
            {
                continue;
            }

            if (
                response?.Headers.GetValueOrDefault("content-type") is { } type
                && !type.StartsWith("text/html", StringComparison.Ordinal)
            )
            {
                _violations.Add($"{path} is a file; its link needs data-enhance-nav=\"false\".");
                continue;
            }

            await ScanAsync(path);
            foreach (var link in await visitor.Page.EvaluateAsync<string[]>(Links))
            {
                Find(link, waiting);
            }
        }
    }

    private async Task ScanAsync(string path)
    {
        if (seen.Add(await visitor.Page.EvaluateAsync<string>(Build)))
        {
            _violations.AddRange(
                from violation in await AxeScan.ViolationsAsync(visitor.Page)
                select $"{path}: {violation}"
            );
        }
    }

    private void Find(string path, Queue<string> waiting)
    {
        if (_shapes.TryAdd(Shape(path), path))
        {
            waiting.Enqueue(path);
        }
    }

    private static string Shape(string path) => Identity().Replace(path.Split('?')[0], "/*");

    [GeneratedRegex(
        @"/(NR10-\d+|\d+|[0-9a-f-]{36}|[0-9a-f]{64})(?=/|$)|(?<=/(pieces|results|prepare|concession))/[^/]+$|(?<=/desk)/[^/]+(?=/)|(?<=/worked-out/[a-z-]+/[0-9a-f-]{36})/[^/]+$"
    )]
    private static partial Regex Identity();
}
