using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Home;

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
        new WorkReader(site.Database, site.Day).ReadAsync(actor, CancellationToken.None);
}
