using Bunit;
using WeldTrace.Web.Components.Tables;

namespace WeldTrace.Web.Tests.Components.Tables;

public sealed class DataTableTests : ComponentTest
{
    private static readonly TableHead[] Heads =
    [
        new("Serial", "serial"),
        new("State", "state"),
        new("Metres", null, true),
    ];

    private IRenderedComponent<DataTable<string>> List(
        string address,
        int total,
        params string[] rows
    ) =>
        Render<DataTable<string>>(p =>
            p.Add(c => c.Caption, "Tools")
                .Add(c => c.Items, rows)
                .Add(c => c.Heads, Heads)
                .Add(c => c.RowTemplate, row => $"<td>{row}</td><td>held</td><td>1</td>")
                .Add(
                    c => c.Query,
                    TableQuery.Read(
                        new Uri("https://site.invalid/tools" + address),
                        ["serial", "state"],
                        2
                    )
                )
                .Add(c => c.Total, total)
                .Add(c => c.Noun, ("tool", "tools"))
                .Add(c => c.CsvPath, "/tools.csv")
                .Add(c => c.Filters, "<input name='state' />")
        );

    [Fact]
    public void Render_SortedColumn_SaysItsOrderAndLinksToTheOther()
    {
        var heads = List("?sort=serial", 5, "A", "B").FindAll("th");

        Assert.Equal(["ascending", "none", null], heads.Select(h => h.GetAttribute("aria-sort")));
        Assert.Equal("/tools?sort=-serial", heads[0].QuerySelector("a")!.GetAttribute("href"));
        Assert.Null(heads[2].QuerySelector("a"));
    }

    [Fact]
    public void Render_MiddlePage_LinksBothWaysAndCounts()
    {
        var page = List("?page=2", 5, "C", "D");

        Assert.Equal("5 tools", page.Find(".pager-count").TextContent);
        Assert.Equal("Page 2 of 3", page.Find(".pager-links span").TextContent);
        Assert.Equal("/tools", page.Find("a[rel=prev]").GetAttribute("href"));
        Assert.Equal("/tools?page=3", page.Find("a[rel=next]").GetAttribute("href"));
    }

    [Fact]
    public void Render_OnePage_HasNoPageLinks()
    {
        var page = List("", 1, "A");

        Assert.Equal("1 tool", page.Find(".pager-count").TextContent);
        Assert.Empty(page.FindAll(".pager-links"));
    }

    [Fact]
    public void Render_PagePastTheEnd_LinksBackToTheLast() =>
        Assert.Equal("/tools?page=3", List("?page=99", 5).Find("a[rel=prev]").GetAttribute("href"));

    [Fact]
    public void Render_NoRows_SaysWhatToDoInsteadOfATable()
    {
        var page = List("?state=lost", 0);

        Assert.Empty(page.FindAll("table"));
        Assert.Contains("Nothing here fits.", page.Markup, StringComparison.Ordinal);
        Assert.Equal("/tools", page.Find("form a").GetAttribute("href"));
    }

    [Fact]
    public void Render_Csv_HasTheSameFiltersAndOrder() =>
        Assert.Equal(
            "/tools.csv?state=held&sort=-serial",
            List("?sort=-serial&state=held", 1, "A").Find("a[download]").GetAttribute("href")
        );

    [Fact]
    public void Render_FilterForm_KeepsTheOrder() =>
        Assert.Equal(
            "-serial",
            List("?sort=-serial", 1, "A").Find("form input[name=sort]").GetAttribute("value")
        );

    [Fact]
    public void Render_Scroller_CanBeReachedByKeyboardAndHasAName()
    {
        var region = List("", 1, "A").Find("[role=region]");

        Assert.Equal("0", region.GetAttribute("tabindex"));
        Assert.Equal("Tools", region.GetAttribute("aria-label"));
    }
}
