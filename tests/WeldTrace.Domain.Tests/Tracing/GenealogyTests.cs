using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Tracing;
using WeldTrace.TestSupport.Records;
using Xunit;
using Record = WeldTrace.Domain.Records.Record;

namespace WeldTrace.Domain.Tests.Tracing;

/// <summary>
/// Genealogy from lot to vessel in both directions (requirement R-042; PED Annex I 3.1.5 as known from memory), and what each act could
/// rely on that day. The graph is compared with the records themselves.
/// </summary>
public sealed class GenealogyTests
{
    [Fact]
    public void AWeldedVessel_LeadsFromItsMaterialToTheToolAndTheWelder()
    {
        var shop = new SampleShop().Reach(30);

        var genealogy = Of(shop);

        var run = genealogy.In(GenealogyGroup.Runs)[0];
        Assert.Equal(shop.Runs.Count, genealogy.In(GenealogyGroup.Runs).Count);
        Assert.Equal(shop.Vessel.Components.Count, genealogy.In(GenealogyGroup.Parts).Count);
        Assert.Superset(
            new HashSet<string>
            {
                shop.Vessel.Serial,
                shop.Procedure.Label,
                shop.Tool.Mark,
                shop.Machine.Name,
                shop.Runs[0].OperatorName,
            },
            genealogy.NeighboursOf(run.Key).Select(n => n.Label).ToHashSet()
        );
        var lot = Assert.Single(genealogy.In(GenealogyGroup.MaterialLots));
        Assert.Equal(
            shop.Vessel.Components.Select(c => c.Serial).Order(),
            genealogy.NeighboursOf(lot.Key).Select(n => n.Label).Order()
        );
    }

    [Fact]
    public void EveryThing_IsConnectedWithTheVessel()
    {
        var shop = new SampleShop().Reach(30);
        Accept.Value(SampleTests.Sign(shop, Leak(shop), SamplePeople.Inspector));
        shop.Report();

        var genealogy = Of(shop, [.. SampleTests.Examiner.Certificates]);

        var vessel = genealogy.In(GenealogyGroup.Vessel)[0];
        Assert.Equal(
            genealogy.Nodes.Select(n => n.Key).Order(),
            genealogy.ConnectedWith(vessel.Key).Order()
        );
    }

    [Fact]
    public void Link_RunsFromLeftToRight_AndOnlyBetweenThingsThatAreThere()
    {
        var shop = new SampleShop().Reach(40);
        var genealogy = Of(shop);
        var columns = genealogy.Nodes.ToDictionary(n => n.Key, n => n.Column);

        Assert.All(genealogy.Links, l => Assert.True(columns[l.Left] <= columns[l.Right]));
        Assert.Equal(
            genealogy.Links.Count,
            genealogy.Links.Select(l => (l.Left, l.Right)).Distinct().Count()
        );
    }

    [Fact]
    public void Weld_IsCoveredByTheCertificateOfItsDay()
    {
        var shop = new SampleShop().Reach(20);

        var proof = ProofOf(Of(shop, [.. shop.Certificates]), GenealogyGroup.People);

        Assert.True(proof.Holds);
        Assert.Equal(shop.Certificates[0].Number, proof.Proof!.Label);
        Assert.Equal(SampleTime.Day, proof.Day);
    }

    /// <summary>A test of vision holds for twelve months; here it lapsed, and was made again twenty days later.</summary>
    [Theory]
    [InlineData(-1, true)]
    [InlineData(10, false)]
    [InlineData(20, true)]
    public void Certificate_StoodOnADay_AsWasKnownThen(int daysAfterDue, bool held)
    {
        var certificate = SampleCertificates.Examiner(
            SamplePeople.Entered("Emre Kaya", Domain.People.Role.Inspector),
            ExaminationMethod.Leak
        );
        var due = certificate.ConfirmationDue!.Value;
        Accept.All(
            certificate.Confirm(due.AddDays(20), SamplePeople.QualityManager, SampleTime.Start)
        );

        var against = CertificateOnDay.Against(certificate, due.AddDays(daysAfterDue));

        Assert.Equal(held, against is null);
    }

    [Fact]
    public void Weld_WithoutACertificateOnRecord_IsSaidSo()
    {
        var proof = ProofOf(Of(new SampleShop().Reach(20)), GenealogyGroup.People);

        Assert.False(proof.Holds);
        Assert.Null(proof.Proof);
        Assert.Contains("No certificate", proof.Sentence, StringComparison.Ordinal);
    }

    /// <summary>Gauge, days from its calibration to the test, error found at the next one, and what is said of the test.</summary>
    [Theory]
    [InlineData(0, null, "good until")]
    [InlineData(364, "0.1", "good until")]
    [InlineData(365, null, "had run out")]
    [InlineData(-1, null, "No calibration")]
    [InlineData(10, "0.6", "found it out of tolerance")]
    public void Test_StandsOnTheCalibrationOfItsDay(int days, string? nextError, string words)
    {
        var shop = new SampleShop().Reach(30);
        var test = Leak(shop);
        var gauge = SampleInstruments.Gauge(test.Instruments![0].Mark);
        var day = gauge.Calibrations[0].On.AddDays(days);
        if (nextError is not null)
        {
            Accept.All(
                gauge.Calibrate(
                    day.AddMonths(1),
                    "Test laboratory",
                    "K-2",
                    null,
                    new Measured(nextError, "bar"),
                    day.AddMonths(1),
                    SamplePeople.Inspector,
                    SampleTime.Start
                )
            );
        }

        var standing = CalibrationOnDay.Of(gauge, day);

        Assert.Equal(words == "good until", standing is { Against: null });
        Assert.Contains(
            words,
            standing is null ? "No calibration" : standing.Against ?? "good until",
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Test_NamesTheInstrumentsThatMeasured()
    {
        var shop = new SampleShop().Reach(30);
        var test = Leak(shop);
        var instruments = SampleTests.Typed.Select(t => t.Found!).ToList();

        var genealogy = Genealogy.Of(shop.Vessel, [.. Records(shop), test, .. instruments], DayOf);

        Assert.Equal(
            test.Instruments!.Select(i => i.Mark).Order(),
            genealogy.In(GenealogyGroup.Instruments).Select(n => n.Label).Order()
        );
        Assert.Equal(
            test.Instruments!.Count,
            genealogy.Proofs.Count(p => p.Work.Group == GenealogyGroup.Tests && p.Holds)
        );
    }

    [Fact]
    public void Signature_LeadsFromTheRecordToWhoSigned()
    {
        var shop = new SampleShop().Reach(20);
        var signature = Signature.Of(
            shop.Runs[0],
            SamplePeople.Inspector,
            "I checked it.",
            SampleTime.Start
        );

        var genealogy = Genealogy.Of(shop.Vessel, [.. Records(shop), signature], DayOf);

        var person = Assert.Single(
            genealogy.In(GenealogyGroup.People),
            n => n.Label == SamplePeople.Inspector.PrintedName
        );
        var link = Assert.Single(genealogy.Links, l => l.Right == person.Key);
        Assert.Equal(["signed: I checked it."], link.Words);
        Assert.Equal([signature], genealogy.Signatures);
    }

    private static LeakTest Leak(SampleShop shop) =>
        Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Tight));

    private static Genealogy Of(SampleShop shop, params IReadOnlyList<Record> more) =>
        Genealogy.Of(shop.Vessel, Records(shop, more), DayOf);

    private static GenealogyProof ProofOf(Genealogy genealogy, GenealogyGroup subject) =>
        genealogy.Proofs.First(p => p.Subject.Group == subject);

    private static IReadOnlyCollection<Record> Records(
        SampleShop shop,
        params IReadOnlyList<Record> more
    ) =>
        [
            shop.Vessel,
            shop.Design,
            shop.Lot,
            shop.Procedure,
            shop.ToolDesign,
            shop.Tool,
            shop.Machine,
            .. shop.Runs,
            .. shop.Findings,
            .. more,
        ];

    private static DateOnly DayOf(DateTimeOffset at) => DateOnly.FromDateTime(at.UtcDateTime);
}
