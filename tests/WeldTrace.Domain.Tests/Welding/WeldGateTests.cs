using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tests.States;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>The rules before a weld run, each through the causes for which it forbids the run. The sources stand in the verdicts.</summary>
public sealed class WeldGateTests
{
    /// <summary>Rule, what is wrong in the shop, and words of the reason that name it and how to mend it.</summary>
    public static TheoryData<string, string, string[]> Causes =>
        new()
        {
            { "F1", "scrapped", ["NR4-0001 is scrapped", "nothing more is welded"] },
            { "F1", "open finding", ["F-00001", "decide and close"] },
            { "F1", "finding to be reworked at another step", ["F-00001", "decide and close"] },
            { "F1", "run not signed", ["run of step 10 isn't signed", "finish it first"] },
            { "F1", "earlier step not done", ["Step 10 comes before step 20", "do it first"] },
            { "F1", "step done", ["Step 10 is passed; step 20 comes next"] },
            { "F1", "route done", ["The route of NR4-0001 is done"] },
            { "F2", "no revision", ["WP-07 has no released revision", "must release one"] },
            { "F2", "draft", ["WP-07 rev A is draft", "needs a released revision"] },
            { "F2", "trial", ["WP-07 rev A is trial", "needs a released revision"] },
            { "F2", "withdrawn", ["WP-07 rev A is withdrawn", "needs a released revision"] },
            {
                "F2",
                "other procedure",
                ["names procedure WP-07, not WP-99", "choose the released revision of WP-07"]
            },
            { "F3", "other alloy", ["is for 6061-T6, the vessel is 6082-T6"] },
            { "F3", "other temper", ["is for 6061-T6, the vessel is 6061-T4"] },
            { "F3", "other thickness", ["is for 3.0 mm, joint J1 is 4.0 mm"] },
            { "F3", "other joint type", ["is for a lap joint, J1 is a butt joint"] },
            { "F6", "no tool", ["No tool is chosen", "choose one"] },
            { "F6", "other tool design", ["is of design TD-99 rev A", "asks for TD-15 rev A"] },
            { "F6", "tool held", ["T-15-01 is held", "must be in service"] },
            { "F6", "tool retired", ["T-15-01 is retired", "must be in service"] },
            {
                "F6",
                "life too short",
                ["T-15-01 has 0.300 m left", "needs 0.406 m", "another tool"]
            },
            {
                "F9",
                "earlier pass missing",
                ["Pass 1 of J1 has no signed run in the planned direction"]
            },
        };

    [Theory]
    [MemberData(nameof(Causes))]
    public void Judge_Cause_ForbidsWithItsReason(string rule, string cause, string[] words)
    {
        var facts = With(cause);

        var verdict = Of(facts, rule);

        Assert.Equal(RuleStanding.Forbids, verdict.Standing);
        Assert.All(words, word => Assert.Contains(word, verdict.Reason, StringComparison.Ordinal));
        Assert.NotEqual("", verdict.Source);
        RecordWatch.AssertReadable(verdict.ToRefusal());
    }

    /// <summary>Whatever the gate forbids can't be started, and the attempt leaves no trace.</summary>
    [Theory]
    [MemberData(nameof(Causes))]
    public void Start_WhenForbidden_StartsNothing(string rule, string cause, string[] words)
    {
        Assert.NotEmpty(words);
        var facts = With(cause);
        var watch = new RecordWatch(facts.Vessel);

        var run = WeldRun.Start(
            Guid.CreateVersion7(SampleTime.Start),
            facts,
            SampleMachines.Entered(),
            facts.Pass.Travel,
            SamplePeople.Operator,
            SampleTime.Start
        );

        watch.AssertRefused(rule, run.Refusals);
    }

    [Fact]
    public void Judge_ShopInOrder_HoldsEveryRule()
    {
        var shop = new SampleShop();
        Assert.All(WeldGate.Judge(shop.Facts()), v => Assert.Equal(RuleStanding.Holds, v.Standing));

        shop.Welded();

        Assert.All(
            WeldGate.Judge(shop.Facts(20)),
            v => Assert.Equal(RuleStanding.Holds, v.Standing)
        );
    }

    [Fact]
    public void Start_KeepsTheRulesAsTheyStood()
    {
        var run = new SampleShop().Running();

        Assert.Equal(
            ["F1", "F2", "F3", "F6", "F9"],
            run.Gate.Select(v => v.RuleId).Intersect(["F1", "F2", "F3", "F6", "F9"])
        );
        Assert.All(run.Gate, v => Assert.Equal(RuleStanding.Holds, v.Standing));
    }

    /// <summary>F9: the operator confirms the travel sense of the drawing; the other one swaps advancing and retreating side.</summary>
    [Fact]
    public void Start_TravelAgainstTheDrawing_IsRefused()
    {
        var shop = new SampleShop();
        var facts = shop.Facts();
        var watch = new RecordWatch(shop.Vessel);

        var run = WeldRun.Start(
            Guid.CreateVersion7(SampleTime.Start),
            facts,
            shop.Machine,
            AdvancingSide.Opposite(facts.Pass.Travel),
            SamplePeople.Operator,
            SampleTime.Start
        );

        watch.AssertRefused("F9", run.Refusals);
        Assert.Contains(
            "counter-clockwise travel",
            Assert.Single(run.Refusals).Sentence,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(nameof(SamplePeople.Engineer))]
    [InlineData(nameof(SamplePeople.Inspector))]
    [InlineData(nameof(SamplePeople.Auditor))]
    [InlineData(nameof(SamplePeople.QualityManager))]
    public void Start_ByAnyoneButAnOperator_IsRefused(string who)
    {
        var shop = new SampleShop();
        var watch = new RecordWatch(shop.Vessel);
        var actor = (Actor)typeof(SamplePeople).GetProperty(who)!.GetValue(null)!;

        watch.AssertRefused("role", shop.Start(10, actor).Refusals);
    }

    /// <summary>A finding that asks for rework lets just that step, and what leads up to it, be welded.</summary>
    [Fact]
    public void Judge_ReworkOfThisStep_Holds()
    {
        var shop = new SampleShop();
        shop.Interrupted();
        Accept.Value(shop.TakeLog(shop.Runs[0]));
        Accept.All(
            shop.Runs[0].Sign(shop.Vessel, SamplePeople.Operator, shop.Now),
            shop.Dispose(shop.Findings[0], DispositionKind.Rework)
        );

        Assert.Equal(RuleStanding.Holds, Of(shop.Facts(), "F1").Standing);
    }

    private static RuleVerdict Of(WeldGateFacts facts, string rule) =>
        WeldGate.Judge(facts).Single(v => v.RuleId == rule);

    private static WeldGateFacts With(string cause)
    {
        var shop = new SampleShop();
        var facts = shop.Facts();
        return cause switch
        {
            "no revision" => facts with { Revision = null },
            "draft" => facts with { Revision = SampleProcedures.Draft(shop.ToolDesign) },
            "trial" => facts with { Revision = SampleProcedures.OnTrial(shop.ToolDesign) },
            "withdrawn" => facts with { Revision = Withdrawn(shop.Procedure) },
            "other procedure" => facts with
            {
                Revision = SampleProcedures.Released(shop.ToolDesign, "WP-99"),
            },
            "other alloy" => new SampleShop(
                design: SampleDesigns.Content() with
                {
                    Alloy = "6082",
                }
            ).Facts(),
            "other temper" => new SampleShop(
                design: SampleDesigns.Content() with
                {
                    Temper = "T4",
                }
            ).Facts(),
            "other thickness" => new SampleShop(
                design: Joints(j => j with { Thickness = Length.FromMillimetres(4) })
            ).Facts(),
            "other joint type" => new SampleShop(
                design: Joints(j => j with { JointType = "butt" })
            ).Facts(),
            "no tool" => facts with { Tool = null },
            "other tool design" => shop.Facts(
                10,
                SampleTools.InService(SampleTools.Design("TD-99"))
            ),
            "tool held" => After(
                shop,
                shop.Tool.Hold("Dropped.", SamplePeople.Operator, SampleTime.Start)
            ),
            "tool retired" => After(
                shop,
                shop.Tool.Retire(
                    RetirementReason.Breakage,
                    "Pin broke.",
                    SamplePeople.Operator,
                    SampleTime.Start
                )
            ),
            "life too short" => shop.Facts(10, Used(shop.Tool, 39.7)),
            "earlier pass missing" => EarlierPassMissing(shop),
            _ => OfTheRoute(shop, cause),
        };
    }

    private static WeldGateFacts OfTheRoute(SampleShop shop, string cause)
    {
        switch (cause)
        {
            case "scrapped":
                Accept.All(shop.Dispose(shop.Report(), DispositionKind.Scrap));
                return shop.Facts();
            case "open finding":
                shop.Report();
                return shop.Facts();
            case "finding to be reworked at another step":
                shop.Welded();
                Accept.All(shop.Dispose(shop.Report(10), DispositionKind.Rework));
                return shop.Facts(20);
            case "run not signed":
                shop.Ended();
                return shop.Facts();
            case "earlier step not done":
                return shop.Facts(20);
            case "step done":
                shop.Welded();
                return shop.Facts(10);
            case "route done":
                shop.Reach(70);
                return shop.Facts(10);
            default:
                throw new ArgumentOutOfRangeException(nameof(cause), cause, "Unknown cause.");
        }
    }

    private static DesignContent Joints(Func<Joint, Joint> change) =>
        SampleDesigns.Content() with
        {
            Joints = [.. SampleDesigns.Content().Joints.Select(change)],
        };

    private static ProcedureRevision Withdrawn(ProcedureRevision revision)
    {
        Accept.All(
            revision.Withdraw("Hooks in the sections.", SamplePeople.Engineer, SampleTime.Start)
        );
        return revision;
    }

    private static WeldGateFacts After(SampleShop shop, Outcome done)
    {
        Accept.All(done);
        return shop.Facts();
    }

    private static Tool Used(Tool tool, double metres)
    {
        var (run, at) = (Guid.CreateVersion7(SampleTime.Start), SampleTime.Start);
        var length = Length.FromMetres(metres);
        tool.Charge(
            new ToolUse(run, "NR4-0000", length, ChargeBasis.ProcessLog, at, "J1"),
            SamplePeople.Operator
        );
        return tool;
    }

    // The step before was passed by a concession, not by a weld.
    private static WeldGateFacts EarlierPassMissing(SampleShop shop)
    {
        Accept.All(shop.Vessel.PassStep(10, SamplePeople.Operator, SampleTime.Start));
        return shop.Facts(20);
    }
}
