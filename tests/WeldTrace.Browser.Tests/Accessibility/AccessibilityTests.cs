using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Features.Trace.Histories;
using WeldTrace.Web.Features.Welding.OverlayRuns;

namespace WeldTrace.Browser.Tests.Accessibility;

/// <summary>No page has a violation that axe can find at WCAG 2.2 AA, whoever looks at it.</summary>
public sealed partial class AccessibilityTests(SiteFixture site)
{
    // These need a run under way, a brought file, an accepted vessel or an empty site; the journeys scan them on their way.
    private static readonly string[] ScannedOnJourneys =
    [
        "/designs/*/edit",
        "/first-run",
        "/me/password",
        "/procedures/*/edit",
        "/procedures/*/qualify",
        "/runs/*/end",
        "/runs/*/interrupt",
        "/runs/*/log",
        "/runs/*/log/*",
        "/runs/*/sign",
        "/sign-in/tablet",
        "/tests/sections/*/measure",
        "/vessels/*/repair/*",
        "/vessels/*/ship",
    ];

    // Shown in place of another page, never linked to.
    private static readonly string[] ScannedHere = ["/failure", "/not-allowed", "/not-found"];

    [Fact]
    public async Task EveryPage_OfEveryRole_HasNoViolation()
    {
        HashSet<string> reached = [.. ScannedOnJourneys, .. ScannedHere];
        List<string> violations = [];
        HashSet<string> seen = [];
        foreach (var person in DemoPeople.All)
        {
            await using var visitor = await Visitor.SignInAsync(site, person);
            var crawl = new Crawl(visitor, seen);
            await crawl.RunAsync(await AlsoAtAsync());
            reached.UnionWith(crawl.Shapes.Keys);
            violations.AddRange(crawl.Violations.Select(v => $"{person.SignInName}: {v}"));
        }

        Assert.True(violations.Count == 0, string.Join('\n', violations));
        var missing = string.Join(' ', Pages().Where(p => !reached.Any(r => Fits(p, r))));
        Assert.True(missing.Length == 0, $"Not reached: {missing}");
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

    // One vessel's page stands for all, so the steps at which the others stand are named here; so are the tools in service.
    private async Task<IReadOnlyList<string>> AlsoAtAsync()
    {
        await using var scope = site.Services.CreateAsyncScope();
        await using var db = await scope
            .ServiceProvider.GetRequiredService<IDbContextFactory<WeldTraceDbContext>>()
            .CreateDbContextAsync();
        var tool = await db.Tools.FirstAsync(t => t.State == ToolState.InService);
        var machine = await db.Machines.FirstAsync();
        var load = await db.HeatTreatments.FirstOrDefaultAsync() ?? await FurnaceLoadAsync(db);
        return
        [
            Routes.HeatTreatment(load.Id),
            Routes.HistoryOrder(await OrderedAsync(db)),
            Routes.ArchiveVessel("NR10-0011"),
            "/vessels/NR10-0002/sign-off/110",
            "/vessels/NR10-0003/pressure/90",
            "/vessels/NR10-0004/leak/80",
            "/vessels/NR10-0005/section/70",
            Routes.EnterLaboratory(nameof(TestKind.TransverseTensile)),
            Routes.EnterLaboratory(nameof(TestKind.RootBend)),
            Routes.EnterLaboratory(nameof(TestKind.Hardness)),
            Routes.Section((await db.Sections.FirstAsync()).Id),
            Routes.LaboratoryTest((await db.LaboratoryTests.FirstAsync()).Id),
            "/vessels/NR10-0006/weld/40",
            Routes.AskConcession("NR10-0010", 20, "F8"),
            Routes.Concession((await db.Concessions.FirstAsync()).Id),
            "/vessels/NR10-0009/findings/new",
            "/vessels/NR10-0009/prepare/J1",
            Routes.Machine(machine.Id) + "/test-weld",
            await OverlayAsync(db),
            Routes.CorrectPhases((await db.WeldRuns.FirstAsync(r => r.Log != null)).Id),
            Routes.ReviewSignal(
                (await db.SignalReviews.FirstAsync()).RunId,
                nameof(WeldParameter.AxialForce)
            ),
            Routes.Tool(tool.Id),
            Routes.Tool(tool.Id) + "/parts",
            .. Planned(await db.Qualifications.FirstAsync()),
        ];
    }

    // One order for all visits; quality and the administrator see it beside the auditor.
    private async Task<Guid> OrderedAsync(WeldTraceDbContext db)
    {
        var orders = site.Services.GetRequiredService<HistoryOrders>();
        var auditor = await db.People.AsNoTracking().SingleAsync(p => p.SignInName == "auditor");
        return orders.SeenBy(auditor.AsActor()) is [var order, ..]
            ? order.Id
            : Accept
                .Value(orders.Place("A vessel", ["NR10-0010"], site.Address, auditor.AsActor()))
                .Id;
    }

    // The one kind of record that the demonstration has none of.
    private static async Task<HeatTreatment> FurnaceLoadAsync(WeldTraceDbContext db)
    {
        var part = await db.Components.FirstAsync();
        var load = SampleHeat.Entered("180", [new TreatedPart(part.Id, part.Serial, false)]);
        db.Add(load);
        Accept.All(await db.SaveAsync(TestContext.Current.CancellationToken));
        return load;
    }

    private static async Task<string> OverlayAsync(WeldTraceDbContext db)
    {
        var runs = db
            .WeldRuns.Where(r => r.Log != null)
            .OrderBy(r => r.StartedAt)
            .Select(r => r.Id);
        return Routes.OverlayRuns
            + new OverlayQuery(WeldParameter.AxialForce, await runs.Take(3).ToListAsync()).Words;
    }

    private static IEnumerable<string> Planned(QualificationRecord record)
    {
        yield return Routes.BeginPiece(record.Id, record.Plan.Pieces[0].Mark);
        yield return Routes.EnterResult(record.Id, record.Plan.Tests[0].Id);
    }

    // A place that the page takes as it comes may be a word of one page that was reached.
    private static bool Fits(string page, string reached) =>
        Regex.IsMatch(
            reached,
            $"^{Regex.Escape(page).Replace(@"\*", "[^/]+", StringComparison.Ordinal)}$"
        );

    private static IEnumerable<string> Pages() =>
        typeof(Program)
            .Assembly.GetTypes()
            .SelectMany(t => t.GetCustomAttributes<RouteAttribute>())
            .Select(r => Parameter().Replace(r.Template, "*"))
            .Where(t => t != "/sign-in");

    [GeneratedRegex(@"\{[^}]+\}")]
    private static partial Regex Parameter();
}
