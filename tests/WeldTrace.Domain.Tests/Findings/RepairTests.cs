using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tests.States;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Findings;

/// <summary>Repair: qualified procedure, two attempts at a place without the board, tests done anew (NASA-STD-5006A 4.11; 6016C MPR 134).</summary>
public sealed class RepairTests
{
    private static readonly SeamPlace Place = At(90);

    [Fact]
    public void Repair_NeedsAReleasedProcedure_AndTheQualityManager()
    {
        var shop = new SampleShop().Reach(30);
        var finding = Report(shop, Place);
        var watch = new RecordWatch(finding, shop.Vessel);

        watch.AssertRefused(
            "procedure",
            Dispose(shop, finding, new RepairFacts(null, [])).Refusals
        );
        watch.AssertRefused(
            "procedure",
            Dispose(
                shop,
                finding,
                new RepairFacts(SampleProcedures.Draft(shop.ToolDesign), [])
            ).Refusals
        );
        watch.AssertRefused(
            "role",
            Dispose(
                shop,
                finding,
                new RepairFacts(shop.Procedure, []),
                SamplePeople.Inspector
            ).Refusals
        );
    }

    /// <summary>Nothing is tested and nothing closed before the repair is recorded; then the finding can be closed, by another person.</summary>
    [Fact]
    public void Repair_IsRecorded_BeforeAnythingElse()
    {
        var shop = new SampleShop().Reach(30);
        var finding = Report(shop, Place);
        Accept.All(shop.Dispose(finding, DispositionKind.Repair));
        Assert.True(finding.Stops(30));
        Assert.Equal((1, 20), (finding.PlannedRepair!.Attempt, finding.PlannedRepair.WeldStep));
        new RecordWatch(finding).AssertRefused("repair", shop.Close(finding).Refusals);

        Accept.All(Mend(shop, finding));
        new RecordWatch(finding).AssertRefused("state", Mend(shop, finding).Refusals);
        Accept.All(shop.Close(finding));

        Assert.Equal(VesselState.InWork, shop.Vessel.State);
        Assert.Equal(30, shop.Vessel.NextStep!.Sequence);
    }

    [Fact]
    public void Repair_OfAnInterruptedWeld_WaivesItsStep()
    {
        var shop = new SampleShop();
        shop.Interrupted();
        var finding = shop.Findings[0];
        Accept.All(shop.Dispose(finding, DispositionKind.Repair));
        Assert.Equal(StepState.Failed, shop.Vessel.Step(10)!.State);

        Accept.All(Mend(shop, finding), shop.Close(finding));

        Assert.Equal(StepState.Waived, shop.Vessel.Step(10)!.State);
        Assert.Equal(20, shop.Vessel.NextStep!.Sequence);
    }

    /// <summary>A repair after the leak test: the board decides first, and the test goes back to be done anew.</summary>
    [Fact]
    public void Repair_AfterALeakTest_AsksTheBoard_AndResetsTheTest()
    {
        var shop = new SampleShop().Reach(40);
        var finding = Report(shop, Place);
        new RecordWatch(finding, shop.Vessel).AssertRefused(
            "board",
            shop.Dispose(finding, DispositionKind.Repair).Refusals
        );
        Accept.All(Board(shop, finding), shop.Dispose(finding, DispositionKind.Repair));

        Assert.Equal(StepState.Ready, shop.Vessel.Step(30)!.State);
        Assert.NotNull(shop.Vessel.Step(30)!.OpenedAgainAt);
        Assert.Equal(StepState.Waiting, shop.Vessel.Step(40)!.State);
        Assert.Equal(StepState.Passed, shop.Vessel.Step(20)!.State);
    }

    [Fact]
    public void Repair_OfAFailedLeakTest_LetsItBeTestedAgain()
    {
        var shop = new SampleShop().Reach(30);
        var leak = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Leaking));
        Accept.Value(SampleTests.Sign(shop, leak));
        var finding = Assert.Single(shop.Findings);
        Accept.All(Board(shop, finding), shop.Dispose(finding, DispositionKind.Repair));
        Assert.True(finding.Stops(30));

        Accept.All(Mend(shop, finding));
        var again = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Tight));
        Accept.Value(SampleTests.Sign(shop, again));
        Accept.All(shop.Close(finding));

        Assert.Equal(40, shop.Vessel.NextStep!.Sequence);
    }

    [Fact]
    public void Repair_ThirdAtAPlace_AsksTheBoard_AndElsewhereDoesNot()
    {
        var shop = new SampleShop().Reach(30);
        for (var attempt = 1; attempt <= Finding.AttemptsWithoutBoard; attempt++)
        {
            var earlier = Report(shop, Place);
            Accept.All(shop.Dispose(earlier, DispositionKind.Repair));
            Assert.Equal(attempt, earlier.PlannedRepair!.Attempt);
            Accept.All(Mend(shop, earlier), shop.Close(earlier));
        }

        var (third, elsewhere) = (Report(shop, At(92)), Report(shop, At(200)));
        new RecordWatch(third, shop.Vessel).AssertRefused(
            "board",
            shop.Dispose(third, DispositionKind.Repair).Refusals
        );
        Accept.All(shop.Dispose(elsewhere, DispositionKind.Repair));
        Accept.All(Board(shop, third), shop.Dispose(third, DispositionKind.Repair));

        Assert.Equal((3, 1), (third.PlannedRepair!.Attempt, elsewhere.PlannedRepair!.Attempt));
    }

    [Theory]
    [InlineData(0, "Ground out.", "length")]
    [InlineData(-3, "Ground out.", "length")]
    [InlineData(20, " ", "missing")]
    public void RecordRepair_WithAFault_IsRefused(double millimetres, string note, string code)
    {
        var shop = new SampleShop().Reach(30);
        var finding = Report(shop, Place);
        Accept.All(shop.Dispose(finding, DispositionKind.Repair));

        new RecordWatch(finding, shop.Vessel).AssertRefused(
            code,
            finding
                .RecordRepair(
                    Length.FromMillimetres(millimetres),
                    note,
                    shop.Vessel,
                    SamplePeople.Operator,
                    shop.Now
                )
                .Refusals
        );
    }

    private static SeamPlace At(double degrees) =>
        new("J1", 1, Angle.FromDegrees(degrees), Angle.FromDegrees(degrees + 4));

    private static Finding Report(SampleShop shop, SeamPlace place)
    {
        var finding = Accept.Value(
            Finding.Report(
                Guid.CreateVersion7(shop.Now),
                shop.Vessel,
                shop.Design,
                20,
                "Cavity at the surface.",
                place,
                SamplePeople.Inspector,
                shop.Now
            )
        );
        finding.GiveNumber(shop.Findings.Count + 1);
        shop.Findings.Add(finding);
        return finding;
    }

    private static Outcome Dispose(
        SampleShop shop,
        Finding finding,
        RepairFacts facts,
        Actor? actor = null
    ) =>
        finding.Dispose(
            DispositionKind.Repair,
            "Mend it.",
            shop.Vessel,
            shop.WeldedBy,
            actor ?? SamplePeople.QualityManager,
            shop.Now,
            facts
        );

    private static Outcome Mend(SampleShop shop, Finding finding) =>
        finding.RecordRepair(
            Length.FromMillimetres(30),
            "Ground out and welded.",
            shop.Vessel,
            SamplePeople.Operator,
            shop.Now
        );

    private static Outcome Board(SampleShop shop, Finding finding) =>
        finding.RecordBoard(
            "MRB-4",
            "Edda Lund, Quentin Hale",
            "Repair once more, and radiograph.",
            SamplePeople.QualityManager,
            shop.Now
        );
}
