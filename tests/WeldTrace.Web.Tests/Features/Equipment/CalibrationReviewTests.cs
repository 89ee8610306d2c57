using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Equipment.ShowInstrument;

namespace WeldTrace.Web.Tests.Features.Equipment;

/// <summary>A caliper is found out of tolerance: what rests on it is listed, and a finding asks for its review.</summary>
public sealed class CalibrationReviewTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Calibrate_OutOfTolerance_ListsWhatWasMeasuredAndHoldsItsVessel()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (caliper, vessel) = await MeasuredAsync(site);

        Accept.All(await CalibrateAsync(site, caliper, "0.03"));

        var finding = await site.Database.ReadAsync(db => db.Findings.SingleAsync());
        Assert.Equal(
            (vessel.Id, 10, FindingState.Open),
            (finding.VesselId, finding.StepSequence, finding.State)
        );
        Assert.StartsWith(
            "CAL-7 was found out of tolerance on",
            finding.Description,
            StringComparison.Ordinal
        );
        var measured = Assert.Single(await ToReviewAsync(site, caliper));
        Assert.Equal(vessel.Id, Assert.IsType<JointFitUp>(measured.Record).VesselId);
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Calibrate_WithinTolerance_AsksForNothing()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (caliper, _) = await MeasuredAsync(site);

        Accept.All(await CalibrateAsync(site, caliper, "0.02"));

        Assert.Equal(0, await site.Database.ReadAsync(db => db.Findings.CountAsync()));
        Assert.Empty(await ToReviewAsync(site, caliper));
    }

    /// <summary>What was measured before the last good calibration rests on the one before.</summary>
    [Fact]
    public async Task Calibrate_GoodOneBetween_AsksForNothingMeasuredBeforeIt()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (caliper, _) = await MeasuredAsync(site);
        site.Clock.Advance(TimeSpan.FromDays(30));
        Accept.All(await CalibrateAsync(site, caliper, "0.01"));
        site.Clock.Advance(TimeSpan.FromDays(30));

        Accept.All(await CalibrateAsync(site, caliper, "0.05", "BM-2"));

        Assert.Equal(0, await site.Database.ReadAsync(db => db.Findings.CountAsync()));
        Assert.Empty(await ToReviewAsync(site, caliper));
    }

    [Fact]
    public async Task Calibrate_AnotherInstrumentOutOfTolerance_LeavesTheVesselAlone()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        await MeasuredAsync(site);
        var other = SampleInstruments.Caliper("CAL-8");
        await site.Database.AddAsync(other);

        Accept.All(await CalibrateAsync(site, other.Id, "0.03"));

        Assert.Equal(0, await site.Database.ReadAsync(db => db.Findings.CountAsync()));
    }

    /// <summary>A vessel whose joint was fitted up with a caliper.</summary>
    private static async Task<(Guid Caliper, Vessel Vessel)> MeasuredAsync(WorkingSite site)
    {
        var (design, lot) = (SampleDesigns.Released(), SampleMaterial.Lot());
        var vessel = SampleVessels.Planned(design, lot);
        var caliper = SampleInstruments.Caliper();
        var fitUp = JointFitUp.Record(
            vessel,
            "J1",
            new Measured("0.05", "mm"),
            new Measured("0.04", "mm"),
            caliper,
            caliper.Mark,
            "",
            site.Today,
            SamplePeople.Operator,
            site.Clock.GetUtcNow()
        );
        await site.Database.AddAsync(design, lot, vessel, caliper, Accept.Value(fitUp));
        return (caliper.Id, vessel);
    }

    private static Task<Outcome> CalibrateAsync(
        WorkingSite site,
        Guid id,
        string error,
        string certificate = "BM-1"
    ) =>
        Handler(site)
            .CalibrateAsync(
                id,
                new CalibrateForm
                {
                    On = site.Today,
                    Laboratory = "Bay metrology",
                    CertificateNumber = certificate,
                    AsFoundError = error,
                },
                SamplePeople.Inspector,
                CancellationToken.None
            );

    private static async Task<
        IReadOnlyList<WeldTrace.Persistence.Loading.MeasuredWith>
    > ToReviewAsync(WorkingSite site, Guid id) =>
        await Handler(site)
            .ToReviewAsync(await site.ReadAsync<Instrument>(id), CancellationToken.None);

    private static InstrumentHandler Handler(WorkingSite site) =>
        new(site.Database, site.Day, site.Clock);
}
