using System.Text.RegularExpressions;

namespace WeldTrace.Browser.Tests.Accessibility;

/// <summary>Follows every link that a person sees and scans one page of each kind.</summary>
internal sealed partial class Crawl(Visitor visitor)
{
    private const int MostPages = 160;

    // A file of its own, such as a photograph, is no page; its sandbox answers no script.
    private const string Links = """
        () => [...document.querySelectorAll('a[href]:not([download]):not([data-enhance-nav=false])')]
          .filter(a => a.origin === location.origin && !a.pathname.startsWith('/attachments/'))
          .map(a => a.pathname + (a.pathname === location.pathname ? '' : a.search))
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

            _violations.AddRange(
                from violation in await AxeScan.ViolationsAsync(visitor.Page)
                select $"{path}: {violation}"
            );
            foreach (var link in await visitor.Page.EvaluateAsync<string[]>(Links))
            {
                Find(link, waiting);
            }
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
