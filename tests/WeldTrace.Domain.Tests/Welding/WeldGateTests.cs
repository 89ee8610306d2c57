using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tests.States;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Paths;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>The rules before a weld run, each through the causes for which it forbids the run. The sources stand in the verdicts.</summary>
public sealed class WeldGateTests
{
    /// <summary>Rule, what is wrong in the shop, and words of the reason that name it and how to mend it.</summary>
    public static TheoryData<string, string, string[]> Causes
    {
        get
        {
            TheoryData<string, string, string[]> all = [];
            foreach (var cause in GateCauses.All)
            {
                all.Add(cause.Rule, cause.Name, cause.Words);
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Causes))]
    public void Judge_Cause_ForbidsWithItsReason(string rule, string cause, string[] words)
    {
        var facts = GateCauses.Named(cause);

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
        var facts = GateCauses.Named(cause);
        var watch = new RecordWatch(facts.Vessel);

        var run = WeldRun.Start(
            Guid.CreateVersion7(SampleTime.Start),
            facts,
            facts.Pass.Travel,
            Enum.GetValues<PreWeldItem>()
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

    /// <summary>ISO 14732:2025 6.3 c is closed to PED categories II to IV alone.</summary>
    [Theory]
    [InlineData(null)]
    [InlineData(PedCategory.None)]
    [InlineData(PedCategory.I)]
    public void Judge_CertificateKeptUpContinuously_HoldsBelowCategoryTwo(PedCategory? category) =>
        Assert.Equal(RuleStanding.Holds, Of(CertificateCauses.Continuous(category), "F4").Standing);

    [Fact]
    public void Start_KeepsTheRulesAsTheyStood()
    {
        var run = new SampleShop().Running();

        Assert.Equal(
            ["F1", "F2", "F3", "F4", "F5", "F6", "F7", "F8", "F9"],
            run.Gate.Select(v => v.RuleId)
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
            AdvancingSide.Opposite(facts.Pass.Travel),
            Enum.GetValues<PreWeldItem>()
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
}
