using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>A repair is a weld run of its own, judged by the same gate (NASA-STD-5006A 4.11, GWR 116-119; rules of the floor F1 to F9).</summary>
public sealed class RepairWeldTests
{
    [Fact]
    public void Repair_IsARun_ThatLeavesTheStepAsItIs()
    {
        var (shop, finding) = Decided();
        var run = Accept.Value(shop.StartRepair(finding));

        Assert.Equal((finding.Id, 1), (run.Repair!.Finding.Id, run.Repair.Attempt));
        Assert.Equal((85, 14), (run.Repair.Start.Degrees, Degrees(run.PlannedPath, run)));
        Assert.Equal(run.Id, finding.PlannedRepair!.Run!.Id);
        Assert.Equal(StepState.Passed, shop.Vessel.Step(10)!.State);
        Assert.Equal("NR4-0001 J1 pass 1, repair of F-00001", run.Label);
    }

    /// <summary>The tool is charged with the metres of the repair.</summary>
    [Fact]
    public void Repair_Welded_IsChargedToTheTool()
    {
        var (shop, finding) = Decided();
        var before = shop.Tool.Used;
        var run = shop.Repaired(finding);

        Assert.Equal(run.PlannedPath.Millimetres, (shop.Tool.Used - before).Millimetres, 6);
    }

    [Fact]
    public void Gate_ForARepair_JudgesEveryRuleOfAPass()
    {
        var (shop, finding) = Decided();

        var pass = WeldGate.Judge(shop.Facts(10)).Select(v => v.RuleId);
        var repair = WeldGate.Judge(shop.RepairFacts(finding));

        Assert.Equal(pass, repair.Select(v => v.RuleId));
        Assert.All(repair, v => Assert.Equal(RuleStanding.Holds, v.Standing));
    }

    /// <summary>Whatever forbids a pass forbids its repair.</summary>
    [Theory]
    [InlineData("F2")]
    [InlineData("F3")]
    [InlineData("F4")]
    [InlineData("F5")]
    [InlineData("F6")]
    [InlineData("F7")]
    [InlineData("F9")]
    public void Repair_AgainstARule_IsNotStarted(string rule)
    {
        var (shop, finding) = Decided();
        var facts = shop.RepairFacts(finding);
        var wrong = rule switch
        {
            "F2" => facts with { Revision = SampleProcedures.Released(shop.ToolDesign) },
            "F3" => facts with
            {
                Revision = SampleProcedures.Released(
                    shop.ToolDesign,
                    content: SampleProcedures.Content(shop.ToolDesign) with
                    {
                        Thickness = Length.FromMillimetres(6),
                    }
                ),
            },
            "F4" => facts with { Certificates = [] },
            "F5" => facts with { Machine = null },
            "F6" => facts with
            {
                Tool = SampleTools.InService(SampleTools.Design(lifeMetres: 0.01)),
            },
            "F7" => facts with { Material = new([], [], null) },
            _ => facts with { Runs = [] },
        };

        var forbids = WeldGate.Judge(wrong).Where(v => v.Standing == RuleStanding.Forbids);

        Assert.Contains(rule, forbids.Select(v => v.RuleId));
        Assert.Contains(
            WeldRun
                .Start(
                    Guid.CreateVersion7(SampleTime.Start),
                    wrong,
                    wrong.Pass.Travel,
                    Enum.GetValues<PreWeldItem>()
                )
                .Refusals,
            r => r.Code == rule
        );
    }

    [Fact]
    public void Repair_WithAnOpenFinding_OrNoDecision_IsNotStarted()
    {
        var (shop, finding) = Decided();
        var other = shop.Report();
        AssertForbidden(shop, finding, "F1");
        AssertForbidden(shop, other, "F1");
        Accept.All(shop.Dispose(other, DispositionKind.UseAsIs));
        Accept.Value(shop.StartRepair(finding));
        AssertForbidden(shop, finding, "F1");
    }

    /// <summary>No concession lets a repair through; the finding is decided otherwise.</summary>
    [Fact]
    public void Repair_TakesNoConcession()
    {
        var (shop, finding) = Decided();
        var facts = shop.RepairFacts(finding) with { Certificates = [] };

        Assert.NotNull(ConcessionRules.AgainstWaiving("F4", facts));
        Assert.Contains(
            Concession.Ask(facts, "F4", "He can.", SamplePeople.Engineer, shop.Now).Refusals,
            r => r.Code == "never"
        );
    }

    /// <summary>What breaks off or leaves its window on a repair is placed from the start of the pass, and is a finding of its own.</summary>
    [Fact]
    public void Repair_ThatBreaksOff_OpensAFinding_AndIsASecondAttempt()
    {
        var (shop, finding) = Decided();
        var run = Accept.Value(shop.StartRepair(finding));
        var opened = Accept.Value(
            run.Interrupt(
                run.PlannedPath * 0.5,
                "Alarm.",
                shop.Vessel,
                shop.Tool,
                SamplePeople.Operator,
                shop.Now
            )
        );
        opened.GiveNumber(9);
        shop.Findings.Add(opened);
        Accept.Value(shop.TakeLog(run));
        Accept.All(run.Sign(shop.Vessel, SamplePeople.Operator, shop.Now, finding));

        Assert.Equal(
            (92, 99),
            (opened.Place!.Start!.Value.Degrees, opened.Place.End!.Value.Degrees)
        );
        Assert.Equal(StepState.Passed, shop.Vessel.Step(10)!.State);
        Accept.All(shop.Dispose(opened, DispositionKind.Repair));
        Assert.Equal(2, opened.PlannedRepair!.Attempt);
        Accept.All(shop.Close(finding));
        shop.Repaired(opened);
        Accept.All(shop.Close(opened));
        Assert.Equal(VesselState.InWork, shop.Vessel.State);
    }

    /// <summary>Signing without the finding would leave it waiting for ever.</summary>
    [Fact]
    public void Repair_SignedWithoutItsFinding_Throws()
    {
        var (shop, finding) = Decided();
        var run = Accept.Value(shop.StartRepair(finding));

        Assert.Throws<ArgumentException>(() =>
            run.Sign(shop.Vessel, SamplePeople.Operator, shop.Now)
        );
    }

    /// <summary>A repair does not stand for the pass itself.</summary>
    [Fact]
    public void Gate_ForALaterPass_CountsNoRepair()
    {
        var (shop, finding) = Decided();
        var run = shop.Repaired(finding);
        var later = shop.Facts(20) with { Runs = [run] };

        Assert.Equal(
            RuleStanding.Forbids,
            WeldGate.Judge(later).Single(v => v.RuleId == "F9").Standing
        );
    }

    private static void AssertForbidden(SampleShop shop, Finding finding, string rule) =>
        Assert.Contains(shop.StartRepair(finding).Refusals, r => r.Code == rule);

    private static double Degrees(Length path, WeldRun run) =>
        Math.Round(path / run.TrackRadius * 180 / Math.PI, 9);

    /// <summary>A finding at 90° to 94° of J1 pass 1, to be repaired from 85° to 99°.</summary>
    private static (SampleShop Shop, Finding Finding) Decided()
    {
        var shop = new SampleShop().Reach(20);
        var finding = Accept.Value(
            Finding.Report(
                Guid.CreateVersion7(shop.Now),
                shop.Vessel,
                shop.Design,
                10,
                "Cavity at the surface.",
                new("J1", 1, Angle.FromDegrees(90), Angle.FromDegrees(94)),
                SamplePeople.Inspector,
                shop.Now
            )
        );
        finding.GiveNumber(1);
        shop.Findings.Add(finding);
        Accept.All(shop.Dispose(finding, DispositionKind.Repair));
        return (shop, finding);
    }
}
