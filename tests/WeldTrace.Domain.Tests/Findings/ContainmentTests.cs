using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tests.States;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Findings;

/// <summary>Cause, containment, and the running figures.</summary>
public sealed class ContainmentTests
{
    private static readonly ContainmentSearch Search = new(
        [SharedThing.Tool, SharedThing.MaterialLot],
        SampleTime.Day,
        SampleTime.Day.AddDays(3),
        7,
        "Same pin."
    );

    [Fact]
    public void Contain_HoldsEachVessel_ByAFindingOfItsOwn()
    {
        var shop = new SampleShop();
        var finding = shop.Report();
        var others = SampleLots.Vessels(shop.Design, shop.Lot, 2);

        var held = Accept.Value(finding.Contain(Search, others, SamplePeople.Inspector, shop.Now));

        Assert.Equal(others.Select(v => v.Id), held.Select(f => f.VesselId));
        Assert.All(others, v => Assert.Equal(VesselState.OnHold, v.State));
        Assert.All(held, f => Assert.Equal(finding.Id, f.EvidenceId));
        var kept = Assert.Single(finding.Containments!);
        Assert.Equal((7, 2), (kept.Listed, kept.Held.Count));
    }

    [Fact]
    public void Contain_WithAFault_HoldsNothing()
    {
        var shop = new SampleShop();
        var finding = shop.Report();
        var other = SampleLots.Vessels(shop.Design, shop.Lot, 1)[0];
        var watch = new RecordWatch(finding, other);

        watch.AssertRefused("missing", Contain(Search with { Reason = "" }));
        watch.AssertRefused("shared", Contain(Search with { Shared = [] }));
        watch.AssertRefused("window", Contain(Search with { Until = Search.From.AddDays(-1) }));
        watch.AssertRefused(
            "role",
            finding.Contain(Search, [other], SamplePeople.Operator, shop.Now).Refusals
        );
        watch.AssertRefused(
            "vessel",
            finding.Contain(Search, [shop.Vessel], SamplePeople.Inspector, shop.Now).Refusals
        );

        IReadOnlyList<Refusal> Contain(ContainmentSearch search) =>
            finding.Contain(search, [other], SamplePeople.Inspector, shop.Now).Refusals;
    }

    [Fact]
    public void Contain_OfAVesselThatLeft_TellsWhich()
    {
        var shop = new SampleShop();
        var finding = shop.Report();
        var other = new SampleShop();
        Accept.All(other.Dispose(other.Report(), DispositionKind.Scrap));
        var watch = new RecordWatch(finding, other.Vessel);

        watch.AssertRefused(
            "vessel",
            finding.Contain(Search, [other.Vessel], SamplePeople.Inspector, shop.Now).Refusals
        );
    }

    [Fact]
    public void StateCause_MayBeStatedAgain_UntilClosed()
    {
        var shop = new SampleShop();
        var finding = shop.Report();
        Accept.All(
            finding.StateCause(DefectType.Cavity, "Cold.", SamplePeople.Engineer, shop.Now),
            finding.StateCause(DefectType.Hook, "Worn pin.", SamplePeople.Engineer, shop.Now)
        );
        Assert.Equal((DefectType.Hook, "Worn pin."), (finding.Cause!.Type, finding.Cause.Text));
        new RecordWatch(finding).AssertRefused(
            "role",
            finding.StateCause(DefectType.Hook, "x", SamplePeople.Operator, shop.Now).Refusals
        );
        shop.Settle(finding);

        new RecordWatch(finding).AssertRefused(
            "state",
            finding.StateCause(DefectType.Hook, "x", SamplePeople.Engineer, shop.Now).Refusals
        );
    }

    /// <summary>By hand: one part repaired of 400 parts welded is 0.25 %; 95 and 365 degrees lie in the fourth and the first sector.</summary>
    [Fact]
    public void Figures_CountKindsPlacesAndRepairLength()
    {
        var shop = new SampleShop().Reach(30);
        var first = Placed(95);
        Accept.All(shop.Dispose(first, DispositionKind.Repair));
        var repaired = shop.Repaired(first).PlannedPath;
        var (second, third) = (Placed(365), shop.Report());
        Accept.All(
            first.StateCause(DefectType.Cavity, "Cold.", SamplePeople.Engineer, shop.Now),
            second.StateCause(DefectType.Cavity, "Cold.", SamplePeople.Engineer, shop.Now)
        );

        var figures = FindingFigures.Of([first, second, third], repaired * 400);

        Assert.Equal([("cavity", 2), ("not stated (report)", 1)], figures.ByType);
        Assert.Equal((1, 1), (figures.BySector[3], figures.BySector[0]));
        Assert.Equal((3, 1), (figures.Findings, figures.WithoutPlace));
        Assert.Equal(0.0025, figures.RepairShare!.Value, 1e-12);
        Assert.Null(FindingFigures.Of([], Length.Zero).RepairShare);

        Finding Placed(double degrees)
        {
            var finding = Accept.Value(
                Finding.Report(
                    Guid.CreateVersion7(shop.Now),
                    shop.Vessel,
                    shop.Design,
                    20,
                    "Cavity.",
                    new SeamPlace("J1", 1, Angle.FromDegrees(degrees), null),
                    SamplePeople.Inspector,
                    shop.Now
                )
            );
            finding.GiveNumber(shop.Findings.Count + 1);
            shop.Findings.Add(finding);
            return finding;
        }
    }
}
