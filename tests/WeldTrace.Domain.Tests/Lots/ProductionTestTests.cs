using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Lots;

/// <summary>Production tests fall due by length, time, change, work on the machine, deviation and defect (Class rules Ch. 13 9.2.3: 100 m, 8 h).</summary>
public sealed class ProductionTestTests
{
    private static readonly ProductionTestRule Rule = new(
        Length.FromMetres(100),
        8,
        true,
        true,
        true,
        true,
        "visual, bends, macro",
        "Class rules Ch. 13 9.2.3"
    );

    [Fact]
    public void Due_WithoutATest_Always() =>
        Assert.Single(Reasons(new ProductionSince(null, Length.Zero, null, [])));

    [Theory]
    [InlineData(99.9, 7.9, false)]
    [InlineData(100, 7.9, true)]
    [InlineData(99.9, 8, true)]
    public void Due_ByLengthOrTime(double metres, double hours, bool due)
    {
        var shop = new SampleShop();
        var since = Since(shop, metres, hours);

        Assert.Equal(due, Reasons(since, shop).Count > 0);
        Assert.True(ProductionTestDue.IsSoon(Rule, since, SampleTime.Start));
    }

    [Theory]
    [InlineData(FindingOrigin.Excursion, true)]
    [InlineData(FindingOrigin.InterruptedRun, true)]
    [InlineData(FindingOrigin.Examination, true)]
    [InlineData(FindingOrigin.LeakTest, true)]
    [InlineData(FindingOrigin.Report, false)]
    public void Due_AfterADeviationOrADefect(FindingOrigin origin, bool due)
    {
        var shop = new SampleShop();
        var since = Since(shop, 1, 1) with { FoundSince = [origin] };

        Assert.Equal(due, Reasons(since, shop).Count > 0);
        Assert.Empty(
            ProductionTestDue.Reasons(
                Rule with
                {
                    AfterDeviation = false,
                    AfterDefect = false,
                },
                since,
                shop.Machine,
                shop.Tool.Id,
                SampleTime.Start
            )
        );
    }

    [Fact]
    public void Due_AfterAFailedTest_AnotherTool_OrWorkOnTheMachine()
    {
        var shop = new SampleShop();
        var since = Since(shop, 1, 1);
        Assert.Empty(Reasons(since, shop));

        Assert.Single(Reasons(since with { Last = Test(shop, hasPassed: false) }, shop));
        Assert.Single(
            ProductionTestDue.Reasons(Rule, since, shop.Machine, Guid.Empty, SampleTime.Start)
        );
        Accept.All(
            shop.Machine.Report(
                MachineEventKind.OtherRepair,
                SampleTime.Day,
                "Belt changed.",
                null,
                SampleTime.Day,
                SamplePeople.QualityManager,
                SampleTime.Start
            )
        );
        Assert.Single(Reasons(since, shop));
    }

    [Fact]
    public void Gate_ForbidsWhenDue_AndCanBeWaived()
    {
        var shop = new SampleShop(design: SampleDesigns.Content() with { ProductionTests = Rule });
        var held = shop.Facts() with { Production = Since(shop, 1, 1) };
        var due = shop.Facts() with { Production = Since(shop, 120, 1) };

        Assert.Equal(RuleStanding.Holds, Of(held).Standing);
        Assert.Equal(RuleStanding.Forbids, Of(due).Standing);
        Assert.Contains("120.0 m are welded", Of(due).Reason, StringComparison.Ordinal);
        Assert.Null(ConcessionRules.AgainstWaiving("F21", due));
        Assert.DoesNotContain(
            "F21",
            WeldGate.Judge(new SampleShop().Facts()).Select(v => v.RuleId)
        );
    }

    [Fact]
    public void Record_WithFaults_IsRefused()
    {
        var shop = new SampleShop();

        Assert.Contains("role", Codes(Record(shop, actor: SamplePeople.Operator)));
        Assert.Equal(["missing", "missing"], Codes(Record(shop, mark: "", result: " ")));
        Assert.Equal(
            ["tool"],
            Codes(Record(shop, tool: SampleTools.InService(SampleTools.Design("TD-99"), "T-99")))
        );

        static IEnumerable<string> Codes(Outcome<ProductionTest> outcome) =>
            outcome.Refusals.Select(r => r.Code);
    }

    private static RuleVerdict Of(WeldGateFacts facts) =>
        WeldGate.Judge(facts).Single(v => v.RuleId == "F21");

    private static IReadOnlyList<string> Reasons(ProductionSince since, SampleShop? shop = null)
    {
        var one = shop ?? new SampleShop();
        return ProductionTestDue.Reasons(Rule, since, one.Machine, one.Tool.Id, SampleTime.Start);
    }

    private static ProductionSince Since(SampleShop shop, double metres, double hours) =>
        new(Test(shop), Length.FromMetres(metres), SampleTime.Start.AddHours(-hours), []);

    private static ProductionTest Test(SampleShop shop, bool hasPassed = true) =>
        Accept.Value(Record(shop, hasPassed: hasPassed));

    private static Outcome<ProductionTest> Record(
        SampleShop shop,
        string mark = "PT-1",
        string result = "Visual without finding.",
        bool hasPassed = true,
        Actor? actor = null,
        WeldTrace.Domain.Tooling.Tool? tool = null
    ) =>
        ProductionTest.Record(
            mark,
            shop.Machine,
            shop.Procedure,
            tool ?? shop.Tool,
            result,
            hasPassed,
            SampleTests.Examiner,
            actor ?? SamplePeople.Inspector,
            SampleTime.Start.AddHours(-9)
        );
}
