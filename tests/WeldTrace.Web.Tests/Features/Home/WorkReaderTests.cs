using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Home;
using WeldTrace.Web.LogJudging;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Tests.Features.Qualifications;
using WeldTrace.Web.Tests.Features.Welding;

namespace WeldTrace.Web.Tests.Features.Home;

/// <summary>What waits for a person, the most urgent first.</summary>
public sealed class WorkReaderTests(PostgresServerFixture server)
{
    /// <summary>The sample certificate is to be confirmed by 2 August 2026.</summary>
    [Theory]
    [InlineData("2026-05-03", null)]
    [InlineData("2026-05-04", Urgency.Quarter)]
    [InlineData("2026-07-03", Urgency.Month)]
    [InlineData("2026-07-26", Urgency.Week)]
    [InlineData("2026-08-01", Urgency.Week)]
    [InlineData("2026-08-02", Urgency.Stopped)]
    public async Task Certificate_IsTold90And30And7DaysAhead(string day, Urgency? expected)
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var welder = SamplePeople.Entered("Olaf Ruud", Role.Operator);
        await site.Database.AddAsync(SampleCertificates.Welder(welder));
        GoTo(site, day);

        var work = await ReadAsync(site, welder.AsActor());

        Assert.Equal(
            expected is { } urgency ? [urgency] : [],
            work.Where(w => w.Title.Contains("OP-Olaf Ruud", StringComparison.Ordinal))
                .Select(w => w.Urgency)
        );
    }

    [Fact]
    public async Task Certificate_OfAnother_IsToldToThoseWhoKeepThemUp()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        await site.Database.AddAsync(SampleCertificates.Welder(SamplePeople.Welders[0]));
        GoTo(site, "2026-07-30");

        Assert.NotEmpty(await ReadAsync(site, SamplePeople.QualityManager));
        Assert.Empty(await ReadAsync(site, SamplePeople.SecondOperator));
        Assert.Empty(await ReadAsync(site, SamplePeople.Auditor));
    }

    /// <summary>Calibrated on 2 March 2026 for a year.</summary>
    [Theory]
    [InlineData("2027-01-30", null)]
    [InlineData("2027-01-31", Urgency.Month)]
    [InlineData("2027-02-23", Urgency.Week)]
    [InlineData("2027-03-02", Urgency.Stopped)]
    public async Task Calibration_IsToldAMonthAhead(string day, Urgency? expected)
    {
        await using var site = await WorkingSite.OpenAsync(server);
        await site.Database.AddAsync(SampleInstruments.Gauge("G-7"));
        GoTo(site, day);

        Assert.Equal(
            expected is { } urgency ? [urgency] : [],
            (await ReadAsync(site, SamplePeople.QualityManager)).Select(w => w.Urgency)
        );
    }

    /// <summary>A tool of 40 m. The passes of the vessel take 0.406 and 0.367 m, the vessel 0.772 m.</summary>
    [Theory]
    [InlineData(39.22, null)]
    [InlineData(39.24, Urgency.Month)]
    [InlineData(39.62, Urgency.Month)]
    [InlineData(39.64, Urgency.Week)]
    [InlineData(39.99, Urgency.Week)]
    public async Task Tool_IsToldWhenTheNextVesselIsTooLong(double used, Urgency? expected)
    {
        await using var site = await WorkingSite.OpenAsync(server);
        await site.Database.AddAsync([.. ToolUsed(used), SampleDesigns.Released()]);

        foreach (var actor in (Actor[])[SamplePeople.Operator, SamplePeople.Engineer])
        {
            Assert.Equal(
                expected is { } urgency ? [urgency] : [],
                (await ReadAsync(site, actor))
                    .Where(w => w.Title.StartsWith("Tool ", StringComparison.Ordinal))
                    .Select(w => w.Urgency)
            );
        }

        Assert.Empty(await ReadAsync(site, SamplePeople.Auditor));
    }

    [Fact]
    public async Task Tool_OfNoReleasedDesign_IsToldOnlyWhenNothingIsLeft()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        await site.Database.AddAsync([.. ToolUsed(39.99)]);

        Assert.DoesNotContain(
            await ReadAsync(site, SamplePeople.Operator),
            w => w.Title.StartsWith("Tool ", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task Qualification_Complete_WaitsForEngineerAndQualityManager_UntilItIsSigned()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();
        await shop.WeldedAsync(record, "1");
        await shop.WeldedAsync(record, "2");
        foreach (var planned in record.Plan.Tests.SkipLast(1))
        {
            Accept.Value(await shop.EnterAsync(record, planned.Id));
        }

        Assert.Empty(await ToSignAsync(shop, shop.Quality));
        Accept.Value(await shop.EnterAsync(record, record.Plan.Tests[^1].Id));

        string[] expected = [$"Sign qualification {record.Number} of {record.ProcedureLabel}"];
        Assert.Equal(expected, await ToSignAsync(shop, shop.Quality));
        Assert.Equal(expected, await ToSignAsync(shop, shop.Engineer));
        Assert.Empty(await ToSignAsync(shop, shop.Operator));
        Assert.Empty(await ToSignAsync(shop, shop.Inspector));
    }

    [Fact]
    public async Task VesselOnHold_IsToldToEachInTheirWords()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        await ReportAsync(vessel);

        async Task<string> FirstAsync(Actor actor) =>
            (await ReadAsync(vessel.Site, actor)).First(w => w.Urgency == Urgency.Stopped).Title;

        Assert.Equal(
            $"{vessel.Serial} waits for a decision on its findings",
            await FirstAsync(SamplePeople.Operator)
        );
        Assert.StartsWith(
            "Decide on",
            await FirstAsync(vessel.Inspector),
            StringComparison.Ordinal
        );
        Assert.StartsWith("Decide on", await FirstAsync(vessel.Quality), StringComparison.Ordinal);
        Assert.Empty(await ReadAsync(vessel.Site, SamplePeople.Auditor));
    }

    [Fact]
    public async Task Everything_StandsInTheOrderOfItsUrgency()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        vessel.Shop.Report(30);
        await vessel.Site.Database.AddAsync([
            .. vessel.Shop.Findings,
            SampleCertificates.Welder(SamplePeople.Welders[1]),
        ]);
        GoTo(vessel.Site, "2026-07-10");

        var work = await ReadAsync(vessel.Site, vessel.Quality);

        Assert.Equal(Urgency.Stopped, work[0].Urgency);
        Assert.StartsWith("Decide on", work[0].Title, StringComparison.Ordinal);
        Assert.Contains(work, w => w.Urgency == Urgency.Month);
        Assert.Equal(work.Select(w => w.Urgency).Order(), work.Select(w => w.Urgency));
    }

    /// <summary>Somebody reports a finding, which puts the vessel on hold.</summary>
    private static async Task ReportAsync(RoutedVessel vessel)
    {
        await using var db = vessel.Site.Database.CreateDbContext();
        var at = vessel.Site.Clock.GetUtcNow();
        db.Add(
            Accept.Value(
                Finding.Report(
                    Guid.CreateVersion7(at),
                    await db.Vessels.SingleAsync(v => v.Serial == vessel.Serial),
                    vessel.Shop.Design,
                    30,
                    "Scratch across the seam.",
                    null,
                    vessel.Inspector,
                    at
                )
            )
        );
        Accept.All(await db.SaveAsync(CancellationToken.None));
    }

    /// <summary>A tool in service of 40 m that has welded so much, with its design and procedure.</summary>
    private static object[] ToolUsed(double metres)
    {
        var design = SampleTools.Design();
        var tool = SampleTools.InService(design);
        tool.Charge(
            new ToolUse(
                Guid.CreateVersion7(SampleTime.Start),
                "NR4-0001",
                Length.FromMetres(metres),
                ChargeBasis.ProcessLog,
                SampleTime.Start,
                "J1"
            ),
            SamplePeople.Operator
        );
        return [design, tool, SampleProcedures.Released(design)];
    }

    private static async Task<IEnumerable<string>> ToSignAsync(
        QualificationShop shop,
        Actor actor
    ) =>
        (await ReadAsync(shop.Site, actor))
            .Where(w => w.Title.StartsWith("Sign qualification", StringComparison.Ordinal))
            .Select(w => w.Title);

    [Fact]
    public async Task Signals_NotReviewed_AreCountedForThoseWhoReviewThem()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        await shop.Database.AddAsync(
            Accept.Value(
                Site.SetUp(
                    "Float works",
                    "UTC",
                    UnitSystem.Metric,
                    false,
                    SamplePeople.Engineer,
                    SampleTime.Start
                )
            )
        );
        var run = await SampleFigures.AmongOthersAsync(shop, meanNewtons: 12_000);

        foreach (var actor in (Actor[])[SamplePeople.Engineer, SamplePeople.QualityManager])
        {
            var work = Assert.Single(await SignalsAsync(shop, actor));
            Assert.Equal(
                $"Signals across runs not reviewed: 1 (Axial force, {run.ProcedureLabel})",
                work.Title
            );
            Assert.Equal(
                $"/procedures/runs?procedure={run.ProcedureRevisionId}&parameter=AxialForce",
                work.Address
            );
        }

        Assert.Empty(await SignalsAsync(shop, SamplePeople.Operator));
        await SampleFigures.ReviewAsync(shop, run);
        Assert.Empty(await SignalsAsync(shop, SamplePeople.Engineer));
    }

    private static async Task<IEnumerable<WaitingWork>> SignalsAsync(WeldShop shop, Actor actor) =>
        (
            await new WorkReader(
                shop.Database,
                new SignalWatch(shop.Database),
                new SiteDay(new SiteReader(shop.Database), shop.Clock),
                shop.Clock
            ).ReadAsync(actor, CancellationToken.None)
        ).Where(w => w.Title.StartsWith("Signals", StringComparison.Ordinal));

    private static void GoTo(WorkingSite site, string day) =>
        site.Clock.SetUtcNow(
            new DateTimeOffset(
                DateOnly
                    .Parse(day, System.Globalization.CultureInfo.InvariantCulture)
                    .ToDateTime(new TimeOnly(9, 0)),
                TimeSpan.Zero
            )
        );

    private static Task<IReadOnlyList<WaitingWork>> ReadAsync(WorkingSite site, Actor actor) =>
        new WorkReader(
            site.Database,
            new SignalWatch(site.Database),
            site.Day,
            site.Clock
        ).ReadAsync(actor, CancellationToken.None);
}
