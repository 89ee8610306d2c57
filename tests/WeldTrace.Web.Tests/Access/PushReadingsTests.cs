using System.Net;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Access;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Tests.Features;
using WeldTrace.Web.Tests.Features.Testing;
using static WeldTrace.Web.Tests.Access.ApiClients;

namespace WeldTrace.Web.Tests.Access;

/// <summary>The bench sends its readings over HTTP: the ladder of <see cref="SampleDesigns"/> begins with 12 bar for 600 s.</summary>
public sealed class PushReadingsTests(PostgresServerFixture server)
{
    private static readonly string Hold = BenchCsv.Of(900, 1, t => t < 120 ? t / 10 : 12, _ => 20);

    private static readonly string Proof = BenchCsv.Of(900, 1, t => Math.Min(t / 10, 18), _ => 20);

    [Fact]
    public async Task Readings_OfAStage_AreRecordedOnce_UnderTheNameOfTheSystem()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        await using var site = new RunningSite(vessel.Site);
        using var admin = await AdministratorAsync(vessel, site);
        using var bench = await TokenAsync(site, admin, TokenScope.PushBenchReadings);

        await RefusedAsync(HttpStatusCode.Conflict, 40, 1, Hold, "No pressure test");
        Accept.All(await BenchCsv.BeginAsync(vessel));
        await RefusedAsync(HttpStatusCode.Conflict, 40, 3, Proof, "comes next");
        await RefusedAsync(HttpStatusCode.UnprocessableEntity, 40, 1, "no log at all", "");
        await RefusedAsync(HttpStatusCode.NotFound, 45, 1, Hold, "no vessel");
        await RefusedAsync(HttpStatusCode.Conflict, 30, null, Hold, "");
        await RefusedAsync(HttpStatusCode.Conflict, 60, 1, Hold, "No pressure test");
        foreach (var _ in Enumerable.Range(0, 2))
        {
            var answer = await PushStageAsync(bench, vessel.Serial, 40, 1, Hold);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Equal("pass", (await JsonAsync(answer)).GetProperty("verdict").GetString());
        }

        var test = await vessel.Site.Database.ReadAsync(db => db.PressureTests.SingleAsync());
        var kept = Assert.Single(test.Stages);
        Assert.Equal(
            (Verdict.Pass, "Bench computer (system)", "hold.csv", 900),
            (kept.Verdict, kept.By, kept.Reading.Log!.FileName, kept.Reading.Log.Samples)
        );
        Assert.Equal(2, await vessel.Site.EntriesAsync(test.Id));
        Assert.Empty(await vessel.LedgerProblemsAsync());

        async Task RefusedAsync(
            HttpStatusCode status,
            int step,
            int? number,
            string csv,
            string words
        )
        {
            var answer = number is { } stage
                ? await PushStageAsync(bench, vessel.Serial, step, stage, csv)
                : await PushDecayAsync(bench, vessel.Serial, step, csv);
            Assert.Equal(status, answer.StatusCode);
            Assert.Contains(words, await DetailAsync(answer), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Readings_OfALeakTest_WaitUntilTheInspectorTakesThem()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        await using var site = new RunningSite(vessel.Site);
        using var admin = await AdministratorAsync(vessel, site);
        using var bench = await TokenAsync(site, admin, TokenScope.PushBenchReadings);
        var decay = BenchCsv.Of(1441, 60, _ => 2, _ => 20);

        var pushed = await PushDecayAsync(bench, vessel.Serial, 30, decay);
        Assert.Equal(HttpStatusCode.OK, pushed.StatusCode);
        using var inspector = await site.SignInAsync(vessel.Inspector.PrintedName);
        var address = Routes.LeakStep(vessel.Serial, 30);
        var page = await SiteVisit.PageAsync(await inspector.GetAsync(address));
        var box = page.QuerySelector("#In-Arrived");
        Assert.True(box is not null, page.Body!.TextContent);
        var answer = await inspector.PostAsync(
            address,
            "leak-test",
            [
                new("In.Arrived", box.GetAttribute("value")!),
                new("In.AtmosphericPressure", "1013"),
                new("In.GaugeUncertainty", "0.1"),
                new("In.TemperatureUncertainty", "0.01"),
                new("In.VolumeUncertaintyPercent", "1"),
                new("In.Gauge", "G-4"),
                new("In.Thermometer", "T-2"),
                new("In.CautionsRead", "true"),
                new("In.Password", WorkingSite.Password),
            ]
        );

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var test = await vessel.Site.Database.ReadAsync(db => db.LeakTests.SingleAsync());
        Assert.Equal(
            (vessel.Inspector.PrintedName, "Bench computer, hold.csv", 1441),
            (test.InspectorName, test.Decay!.Log!.FileName, test.Decay.Log.Samples)
        );
        Assert.Empty(await vessel.LedgerProblemsAsync());
        var again = await PushDecayAsync(bench, vessel.Serial, 30, decay);
        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
    }
}
