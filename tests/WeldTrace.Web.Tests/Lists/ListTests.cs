using System.Net.Http.Headers;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Lists;

/// <summary>Every list of the running site filters, sorts, pages and goes out as CSV.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class ListTests(DemoSite site)
{
    private static readonly int PageSize = new TableQuery { Path = "" }.PageSize;

    [Fact]
    public void Table_HasARowForEachListThatGoesOutAsCsv() =>
        Assert.Equal(
            SiteEndpoint
                .AllOf(site)
                .Select(e => e.Pattern)
                .Where(p =>
                    p.EndsWith(".csv", StringComparison.Ordinal)
                    && !p.Contains('{', StringComparison.Ordinal)
                )
                .Order(StringComparer.Ordinal),
            ListRow.All.Select(l => l.Csv).Order(StringComparer.Ordinal)
        );

    [Fact]
    public async Task EachList_IsNarrowedByItsFilter_WhichStaysInItsField()
    {
        List<string> wrong = [];
        foreach (var list in ListRow.All)
        {
            var fitting = await PageAsync($"{list.Page}?{list.Filter}={list.Fits}");
            if (Total(fitting) == 0 || ValueOf(fitting, list.Filter) != list.Fits)
            {
                wrong.Add($"{list.Page} finds nothing for {list.Fits}, or forgets it.");
            }

            var nothing = await PageAsync($"{list.Page}?{list.Filter}={list.Misses}");
            if (Total(nothing) > 0 || nothing.QuerySelector(".empty") is null)
            {
                wrong.Add($"{list.Page} finds something for {list.Misses}, or does not say so.");
            }
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Fact]
    public async Task EachList_IsSortedByEachHeadThatSaysSo_BothWays()
    {
        foreach (var list in ListRow.All)
        {
            var heads = (await PageAsync(list.Page)).QuerySelectorAll("th[aria-sort] a");
            Assert.True(heads.Length > 0, $"{list.Page} sorts by nothing.");
            foreach (var address in heads.Select(h => h.GetAttribute("href")!))
            {
                await AssertTurnsAsync(address);
            }
        }
    }

    [Fact]
    public async Task EachList_IsPaged_AndNoRowIsOnTwoPages()
    {
        foreach (var list in ListRow.All)
        {
            var first = await PageAsync(list.Page);
            var second = await PageAsync($"{list.Page}?page=2");

            Assert.Equal(Math.Min(PageSize, Total(first)), Rows(first).Count);
            Assert.Equal(Math.Clamp(Total(first) - PageSize, 0, PageSize), Rows(second).Count);
            Assert.Empty(Links(first).Intersect(Links(second)));
            Assert.Equal(
                Total(first) > PageSize,
                first.QuerySelector(".pager a[rel=next]") is not null
            );
        }
    }

    [Fact]
    public async Task EachList_GoesOutAsCsv_WithTheFilterOfThePage()
    {
        foreach (var list in ListRow.All)
        {
            var page = await PageAsync($"{list.Page}?{list.Filter}={list.Fits}");
            var link = page.QuerySelector(".table-foot a[download]")!.GetAttribute("href")!;
            Assert.StartsWith(list.Csv, link, StringComparison.Ordinal);

            var answer = await (await site.VisitAsync(DemoPeople.Auditor)).GetAsync(link);
            Assert.Equal(
                new MediaTypeHeaderValue("text/csv", "utf-8"),
                answer.Content.Headers.ContentType
            );
            Assert.EndsWith(".csv", answer.Content.Headers.ContentDisposition!.FileName!.Trim('"'));
            var lines = await CsvLines.OfAsync(answer);
            Assert.Equal((list.Csv, Total(page) + 1), (list.Csv, lines.Count));
            Assert.All(lines, cells => Assert.Equal(lines[0].Count, cells.Count));
        }
    }

    // Rows that are equal under the head may keep their own order, so the column is read and not the rows.
    private async Task AssertTurnsAsync(string address)
    {
        var ascending = await PageAsync(address);
        var head = ascending.QuerySelector("th[aria-sort=ascending]");
        Assert.True(head is not null, $"{address} does not say how it is sorted.");
        var back = head.QuerySelector("a")!.GetAttribute("href")!;
        var descending = await PageAsync(back);
        Assert.NotNull(descending.QuerySelector("th[aria-sort=descending]"));
        List<string> up = [.. Column(ascending, head.Index())];
        List<string> down = [.. Column(descending, head.Index())];
        Assert.True(
            Total(ascending) > PageSize
                ? !up.SequenceEqual(down)
                : up.AsEnumerable().Reverse().SequenceEqual(down),
            $"{address} is not turned round: {string.Join(" | ", up)} against {string.Join(" | ", down)}"
        );
    }

    // Of a state with its note only the state is the key, and of a number with its revision only the number.
    private static IEnumerable<string> Column(IHtmlDocument page, int index) =>
        Rows(page)
            .Select(r =>
                (r.Children[index].QuerySelector(".mark-word") ?? r.Children[index])
                    .TextContent.Split(" rev ")[0]
                    .Trim()
            );

    private static IReadOnlyList<IElement> Rows(IHtmlDocument page) =>
        [.. page.QuerySelectorAll("tbody tr")];

    private static IEnumerable<string?> Links(IHtmlDocument page) =>
        Rows(page).Select(r => r.QuerySelector("a")?.GetAttribute("href") ?? r.TextContent);

    private static int Total(IHtmlDocument page) =>
        int.Parse(
            string.Concat(page.QuerySelector(".pager-count")!.TextContent.Where(char.IsAsciiDigit)),
            System.Globalization.CultureInfo.InvariantCulture
        );

    private static string? ValueOf(IHtmlDocument page, string filter) =>
        page.QuerySelector($"form.filters [name={filter}]") switch
        {
            IHtmlSelectElement choice => choice.Value,
            IHtmlInputElement input => input.Value,
            _ => null,
        };

    private async Task<IHtmlDocument> PageAsync(string path) =>
        await SiteVisit.PageAsync(await (await site.VisitAsync(DemoPeople.Auditor)).GetAsync(path));
}
