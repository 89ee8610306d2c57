using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Lots;

/// <summary>Floor rule F20 before a weld and before the acceptance of a vessel.</summary>
public sealed class LotRulesTests
{
    [Fact]
    public void Welding_ADesignWithoutSamples_IsNotAsked() =>
        Assert.DoesNotContain(
            "F20",
            WeldGate.Judge(new SampleShop().Facts()).Select(v => v.RuleId)
        );

    [Fact]
    public void Welding_OutsideALot_OrBeforeTheChoice_IsForbidden_AndNeverWaived()
    {
        var shop = new LotShop();
        AssertForbidden(Facts(shop, null), "belongs to no production lot");
        var lot = Accept.Value(shop.Form());
        AssertForbidden(Facts(shop, lot), "samples of lot L-1 are not chosen");

        Assert.NotNull(Concessions.ConcessionRules.AgainstWaiving("F20", Facts(shop, lot)));
    }

    [Fact]
    public void Welding_AsTheLotSays_Holds_AndOtherwiseIsForbidden()
    {
        var shop = new LotShop();
        var lot = shop.Sampled();
        var facts = Facts(shop, lot);
        Assert.Equal(RuleStanding.Holds, Of(facts).Standing);
        Assert.Equal(lot.Id, Assert.Single(Of(facts).Behind!).Id);

        AssertForbidden(facts with { Today = SampleTime.Day.AddDays(21) }, "today is outside");
        AssertForbidden(
            facts with
            {
                Revision = SampleProcedures.Released(shop.ToolDesign, "WP-08"),
            },
            "not to WP-08"
        );
        AssertForbidden(facts with { ToolDesign = SampleTools.Design("TD-99") }, "not of TD-99");
        Assert.Null(Concessions.ConcessionRules.AgainstWaiving("F20", facts));
    }

    [Fact]
    public void Acceptance_AwaitsTheLot()
    {
        var shop = new LotShop();
        var lot = shop.Sampled();
        var vessel = shop.Vessels.First(v => v.Sample is null);
        Assert.NotNull(Against(shop, vessel, lot));
        Assert.NotNull(Against(shop, vessel, null));
        shop.Take(lot, lot.Samples[0]);
        Assert.NotNull(Against(shop, vessel, lot));

        Accept.All(
            lot.Accept(
                LotStatistics.State(lot, shop.Design.Content.Pressures.Meop, 0, 0).Statement,
                [],
                SamplePeople.QualityManager,
                SampleTime.Start
            )
        );

        Assert.Null(Against(shop, vessel, lot));
        Assert.NotNull(Against(shop, shop.Vessel(lot.Samples[0]), lot));
    }

    /// <summary>After a failed sample each vessel is decided by itself: only a closed "use as is" lets it through.</summary>
    [Fact]
    public void Acceptance_OfAFailedLot_NeedsTheDecisionOnThatVessel()
    {
        var shop = new LotShop();
        var lot = shop.Sampled();
        var findings = shop.Take(lot, lot.Samples[0], Verdict.Fail);
        var finding = findings[0];
        finding.GiveNumber(1);
        var vessel = shop.Vessels.Single(v => v.Id == finding.VesselId);
        Assert.NotNull(Against(shop, vessel, lot, finding));
        Accept.All(
            finding.Dispose(
                DispositionKind.UseAsIs,
                "The board decided on the other sections.",
                vessel,
                [],
                SamplePeople.QualityManager,
                SampleTime.Start
            )
        );
        Assert.NotNull(Against(shop, vessel, lot, finding));

        Accept.All(
            finding.Close(
                "Seen.",
                vessel,
                [finding],
                [],
                SamplePeople.QualityManager,
                SampleTime.Start
            )
        );

        Assert.Null(Against(shop, vessel, lot, finding));
    }

    private static Refusal? Against(
        LotShop shop,
        Vessel vessel,
        ProductionLot? lot,
        params IReadOnlyList<Finding> findings
    ) => LotRules.AgainstAcceptance(vessel, shop.Design, lot, findings);

    private static WeldGateFacts Facts(LotShop shop, ProductionLot? lot) =>
        new SampleShop().Facts() with
        {
            Vessel = shop.Vessels[0],
            Step = shop.Vessels[0].Step(10)!,
            Design = shop.Design,
            Revision = shop.Procedure,
            ToolDesign = shop.ToolDesign,
            Lot = lot,
        };

    private static void AssertForbidden(WeldGateFacts facts, string words)
    {
        Assert.Equal(RuleStanding.Forbids, Of(facts).Standing);
        Assert.Contains(words, Of(facts).Reason, StringComparison.Ordinal);
    }

    private static RuleVerdict Of(WeldGateFacts facts) =>
        WeldGate.Judge(facts).Single(v => v.RuleId == "F20");
}
