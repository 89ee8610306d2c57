using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Tests.Lots;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Laboratory;

// A sample that stands for a lot (floor rule F20).
public sealed partial class LaboratoryTestTests
{
    [Theory]
    [InlineData("111", 5)]
    [InlineData("100", 0)]
    public void Test_ForALot_HoldsEachVesselUnlessItPassed(string least, int held)
    {
        var shop = new LotShop();
        var test = Accept.Value(Enter(TestKind.Hardness, new(Hardness: Traverse(least))));

        var findings = test.FindingsOn(shop.Vessels, SamplePeople.Inspector, SampleTime.Start);

        Assert.Equal(held, findings.Count);
        Assert.All(findings, f => Assert.Equal(FindingOrigin.LotSample, f.Origin));
        Assert.Equal(held, shop.Vessels.Count(v => v.State == VesselState.OnHold));
    }

    [Fact]
    public void Lot_WithAFailedLaboratoryTest_FailsAndIsNotAccepted_UntilTheSampleIsTestedAgain()
    {
        var shop = new LotShop();
        var lot = shop.Sampled();
        shop.Take(lot, lot.Samples[0]);
        Assert.True(lot.HasPassed);

        TakeHardness(lot, "111");
        Assert.Equal(LotState.Failed, lot.State);
        Assert.Contains("F20", shop.AcceptCodes(lot));
        Assert.Contains(
            "Laboratory: 0 of 1 tests passed",
            shop.Statement(lot),
            StringComparison.Ordinal
        );

        TakeHardness(lot, "100");
        Assert.Equal(LotState.Sampling, lot.State);
        Assert.Empty(shop.AcceptCodes(lot));
        Assert.Contains(
            "Laboratory: 1 of 1 tests passed",
            shop.Statement(lot),
            StringComparison.Ordinal
        );
    }

    private static void TakeHardness(ProductionLot lot, string least) =>
        lot.TakeLaboratory(
            Accept.Value(Enter(TestKind.Hardness, new(Hardness: Traverse(least)))).AsLotResult(),
            SamplePeople.Inspector,
            SampleTime.Start
        );
}
