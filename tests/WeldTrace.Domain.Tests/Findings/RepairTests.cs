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
            Dispose(shop, finding, shop.RepairOf(finding) with { Procedure = null }).Refusals
        );
        watch.AssertRefused(
            "procedure",
            Dispose(
                shop,
                finding,
                shop.RepairOf(finding) with
                {
                    Procedure = SampleProcedures.Draft(shop.ToolDesign),
                }
            ).Refusals
        );
        watch.AssertRefused(
            "role",
            Dispose(shop, finding, shop.RepairOf(finding), SamplePeople.Inspector).Refusals
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

        var run = shop.Repaired(finding);
        Assert.Equal((run.Id, run.PlannedPath), (finding.Repair!.Run!.Id, finding.Repair.Length));
        Assert.Contains(shop.StartRepair(finding).Refusals, r => r.Code == "F1");
        Accept.All(shop.Close(finding));

        Assert.Equal(VesselState.InWork, shop.Vessel.State);
        Assert.Equal(30, shop.Vessel.NextStep!.Sequence);
    }

    [Fact]
    public void Repair_OfAnInterruptedWeld_WaivesItsStep()
    {
        var shop = new SampleShop();
        var broken = shop.Interrupted();
        Accept.Value(shop.TakeLog(broken));
        Accept.All(broken.Sign(shop.Vessel, SamplePeople.Operator, shop.Now));
        var finding = shop.Findings[0];
        Accept.All(shop.Dispose(finding, DispositionKind.Repair));
        Assert.Equal(StepState.Failed, shop.Vessel.Step(10)!.State);

        shop.Repaired(finding);
        Accept.All(shop.Close(finding));

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

        shop.Repaired(finding);
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
            shop.Repaired(earlier);
            Accept.All(shop.Close(earlier));
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

    /// <summary>A decided repair counts before it is welded, so that two decisions don't share an attempt.</summary>
    [Fact]
    public void Repair_DecidedTwiceAtAPlace_CountsBoth()
    {
        var shop = new SampleShop().Reach(30);
        var (first, second) = (Report(shop, Place), Report(shop, At(91)));
        Accept.All(
            shop.Dispose(first, DispositionKind.Repair),
            shop.Dispose(second, DispositionKind.Repair)
        );

        Assert.Equal((1, 2), (first.PlannedRepair!.Attempt, second.PlannedRepair!.Attempt));
    }

    /// <summary>358° and 2° are neighbours on a circle.</summary>
    [Theory]
    [InlineData(356, 358, 362, 366, true)]
    [InlineData(350, 359, 0, 3, true)]
    [InlineData(90, 94, 98, 99, true)]
    [InlineData(90, 94, 100, 101, false)]
    [InlineData(355, 365, 20, 30, false)]
    public void Place_NextToAnother_IsTheSame(double a, double b, double c, double d, bool same)
    {
        var (one, other) = (Along(a, b), Along(c, d));

        Assert.Equal((same, same), (one.Overlaps(other), other.Overlaps(one)));
        Assert.False(one.Overlaps(other with { JointCode = "J2" }));
    }

    [Theory]
    [InlineData(90, 90, "angle")]
    [InlineData(94, 90, "angle")]
    [InlineData(-1, 100, "angle")]
    [InlineData(0, 400, "angle")]
    [InlineData(91, 100, "cover")]
    [InlineData(80, 93, "cover")]
    public void Repair_AtAWrongPlace_IsRefused(double from, double to, string code)
    {
        var shop = new SampleShop().Reach(30);
        var finding = Report(shop, Place);
        var refused = Dispose(
            shop,
            finding,
            shop.RepairOf(finding) with
            {
                Place = Along(from, to),
            }
        );

        Assert.Contains(refused.Refusals, r => r.Code == code);
    }

    [Theory]
    [InlineData("J9", 1, "pass")]
    [InlineData("J1", 9, "pass")]
    [InlineData("J1", 2, "pass")]
    public void Repair_OfAPassThatIsNotWelded_IsRefused(string joint, int pass, string code)
    {
        var shop = new SampleShop().Reach(20);
        var finding = shop.Report(10);

        new RecordWatch(finding, shop.Vessel).AssertRefused(
            code,
            Dispose(
                shop,
                finding,
                shop.RepairOf(finding) with
                {
                    Place = Along(0, 10) with { JointCode = joint, PassNumber = pass },
                }
            ).Refusals
        );
        new RecordWatch(finding, shop.Vessel).AssertRefused(
            "place",
            Dispose(shop, finding, shop.RepairOf(finding) with { Place = null }).Refusals
        );
    }

    /// <summary>Until the weld begins another decision may take its place, and the first stays to be read; afterwards none may.</summary>
    [Fact]
    public void Repair_NotBegun_IsDecidedAnew()
    {
        var shop = new SampleShop().Reach(30);
        var finding = Report(shop, Place);
        Accept.All(
            shop.Dispose(finding, DispositionKind.Repair),
            shop.Dispose(finding, DispositionKind.UseAsIs)
        );
        Assert.Equal(
            (DispositionKind.UseAsIs, DispositionKind.Repair),
            (finding.Disposition!.Kind, Assert.Single(finding.EarlierDecisions!).Kind)
        );
        Assert.Null(finding.PlannedRepair);
        Accept.All(shop.Close(finding));

        var begun = Report(shop, Place);
        Accept.All(shop.Dispose(begun, DispositionKind.Repair));
        Assert.Equal(1, begun.PlannedRepair!.Attempt);
        Accept.Value(shop.StartRepair(begun));
        new RecordWatch(begun, shop.Vessel).AssertRefused(
            "state",
            shop.Dispose(begun, DispositionKind.UseAsIs).Refusals
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

    private static RepairPlace Along(double from, double to) =>
        new("J1", 1, Angle.FromDegrees(from), Angle.FromDegrees(to));

    private static Outcome Board(SampleShop shop, Finding finding) =>
        finding.RecordBoard(
            "MRB-4",
            "Edda Lund, Quentin Hale",
            "Repair once more, and radiograph.",
            SamplePeople.QualityManager,
            shop.Now
        );
}
