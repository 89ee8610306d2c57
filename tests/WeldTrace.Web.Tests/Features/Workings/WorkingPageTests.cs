using System.Globalization;
using System.Net;
using AngleSharp.Dom;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Features.Workings;

/// <summary>Every computed figure of the demonstration leads to a page of its own that works it out again to the same.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class WorkingPageTests(DemoSite site)
{
    private const string Links = "a[href^='/worked-out/']";

    // What is shown has fewer digits than the working, and shares are shown in percent.
    private const double Rounding = 0.006;

    [Fact]
    public async Task FoldedWorkings_AllLeadToAPage_ThatShowsTheSame()
    {
        var visit = await site.VisitAsync(Inspector);
        List<string> wrong = [];
        foreach (var path in await site.ReadAsync(PagesAsync))
        {
            var page = await SiteVisit.PageAsync(await visit.GetAsync(path));
            foreach (var folded in page.QuerySelectorAll("details.working"))
            {
                var href = folded.QuerySelector(Links)?.GetAttribute("href");
                var own = href is null ? null : await WorkingAsync(visit, href);
                if (own is null || Values(own) != Values(folded))
                {
                    wrong.Add($"{path}: {folded.QuerySelector("summary")!.TextContent} ({href})");
                }
            }
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Fact]
    public async Task FiguresInTables_LeadToAPage_ThatHasTheSameResult()
    {
        var visit = await site.VisitAsync(Inspector);
        List<string> wrong = [];
        var count = 0;
        foreach (var path in await site.ReadAsync(PagesAsync))
        {
            var page = await SiteVisit.PageAsync(await visit.GetAsync(path));
            foreach (var figure in page.QuerySelectorAll($"td {Links}"))
            {
                count++;
                var own = await WorkingAsync(visit, figure.GetAttribute("href")!);
                var shown = Number(figure.TextContent);
                if (own is null || !Results(own).Any(result => Agrees(shown, result)))
                {
                    wrong.Add(
                        $"{path}: {figure.TextContent.Trim()} ({figure.GetAttribute("href")})"
                    );
                }
            }
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
        Assert.True(count > 10, $"Only {count} figures led to a working.");
    }

    [Theory]
    [InlineData("tools", "left-99")]
    [InlineData("tools", "wear/..")]
    [InlineData("shoes", "left-1")]
    public async Task UnknownFigure_IsNotFound(string kind, string key)
    {
        var visit = await site.VisitAsync(Inspector);
        var tool = await site.ReadAsync(db =>
            db.Tools.OrderBy(t => t.Mark).Select(t => t.Id).FirstAsync()
        );

        var answer = await visit.GetAsync(Routes.Working(kind, tool, key));

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Theory]
    [InlineData("tools")]
    [InlineData("procedures")]
    [InlineData("designs")]
    [InlineData("tests")]
    [InlineData("lots")]
    [InlineData("runs")]
    [InlineData("laboratory")]
    [InlineData("qualifications")]
    [InlineData("results")]
    public async Task UnknownRecord_IsNotFound(string kind)
    {
        var visit = await site.VisitAsync(Inspector);

        var answer = await visit.GetAsync(Routes.Working(kind, Guid.Empty, "pitch"));

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    private static DemoPerson Inspector => DemoPeople.All.Single(p => p.SignInName == "inspector");

    private static async Task<IReadOnlyList<string>> PagesAsync(WeldTraceDbContext db) =>
        [
            .. (await db.Tools.Select(t => t.Id).ToListAsync()).Select(Routes.Tool),
            .. (await db.ProcedureRevisions.Select(p => p.Id).ToListAsync()).Select(
                Routes.Procedure
            ),
            .. (await db.Qualifications.Select(q => q.Id).ToListAsync()).Select(
                Routes.Qualification
            ),
            .. (await db.SpecimenTests.Select(t => t.Id).ToListAsync()).Select(Routes.Result),
            .. (await db.VesselDesigns.Select(d => d.Id).ToListAsync()).Select(Routes.Design),
            .. (await db.WeldRuns.Select(r => r.Id).ToListAsync()).Select(Routes.Run),
            .. (await db.Sections.Select(s => s.Id).ToListAsync()).Select(Routes.Section),
            .. (await db.LaboratoryTests.Select(t => t.Id).ToListAsync()).Select(
                Routes.LaboratoryTest
            ),
            .. (await db.LeakTests.Select(t => t.Id).ToListAsync()).Select(Routes.LeakTest),
            .. (await db.PressureTests.Select(t => t.Id).ToListAsync()).Select(Routes.PressureTest),
            .. (await db.ProductionLots.Select(l => l.Id).ToListAsync()).Select(Routes.Lot),
            Routes.PressureStep("NR10-0003", 90),
            Routes.LeakStep("NR10-0004", 80),
        ];

    private static async Task<IElement?> WorkingAsync(SiteVisit visit, string href)
    {
        var answer = await visit.GetAsync(href);
        return answer.StatusCode == HttpStatusCode.OK
            ? (await SiteVisit.PageAsync(answer)).QuerySelector("main")
            : null;
    }

    private static string Values(IElement working) =>
        working.QuerySelector(".formula")!.TextContent
        + working.QuerySelector("table.working-values")!.TextContent;

    private static IEnumerable<double> Results(IElement working) =>
        working
            .QuerySelectorAll("table.working-values tbody")[^1]
            .QuerySelectorAll("td:last-child")
            .Select(cell => Number(cell.TextContent));

    private static double Number(string text)
    {
        var plain = text.Trim()
            .TrimStart('>', ' ')
            .Replace('−', '-')
            .Replace("\u202f", "", StringComparison.Ordinal);
        var digits = plain.TakeWhile(c => char.IsAsciiDigit(c) || c is '.' or '-' or '+' or 'E');
        return double.Parse(string.Concat(digits), CultureInfo.InvariantCulture);
    }

    private static bool Agrees(double shown, double result) =>
        Math.Abs(shown - result) <= Rounding * Math.Max(1, Math.Abs(result))
        || Math.Abs((shown / 100) - result) <= Rounding;
}
