using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.States;

/// <summary>The steps of a route: 10 and 20 weld, 30 leak test, 40 pressure test, 50 section, 60 acceptance.</summary>
public sealed class StepStateTests
{
    private const string Table = """
                    begin       pass    fail    useAsIs     rework
        Waiting     !F1         !F1     !F1     Waiting     Ready
        Ready       InProgress  Passed  Failed  Ready       Ready
        InProgress  !F1         Passed  Failed  InProgress  Ready
        Passed      !F1         !F1     !F1     Passed      Ready
        Failed      !F1         !F1     !F1     Waived      Ready
        Waived      !F1         !F1     !F1     =Waived     Ready
        """;

    private const int Step = 20;

    public static TheoryData<StepState, string, string> Cells => StateTable.Read<StepState>(Table);

    [Theory]
    [MemberData(nameof(Cells))]
    public void Act_InState_FollowsTheTable(StepState state, string act, string expected)
    {
        var shop = In(state);
        var vessel = shop.Vessel;
        var watch = new RecordWatch(vessel);

        var outcome = act switch
        {
            "begin" => vessel.BeginStep(Step, SamplePeople.Operator, shop.Now),
            "pass" => vessel.PassStep(Step, SamplePeople.Operator, shop.Now),
            "fail" => vessel.FailStep(Step, SamplePeople.Operator, shop.Now),
            "useAsIs" => shop.Dispose(shop.Report(Step), DispositionKind.UseAsIs),
            "rework" => shop.Dispose(shop.Report(Step), DispositionKind.Rework),
            _ => throw new ArgumentOutOfRangeException(nameof(act), act, "Unknown act."),
        };

        watch.AssertOutcome(expected, outcome.Refusals, vessel.Step(Step)!.State);
    }

    [Fact]
    public void Pass_MakesTheNextReady_AndTheLastAcceptsTheVessel()
    {
        var shop = new SampleShop();
        foreach (var step in shop.Vessel.Steps.Select(s => s.Sequence).ToList())
        {
            Assert.Equal(StepState.Ready, shop.Vessel.Step(step)!.State);
            Accept.All(shop.Vessel.PassStep(step, SamplePeople.Inspector, shop.Now));
        }

        Assert.Equal(VesselState.Accepted, shop.Vessel.State);
        Assert.Null(shop.Vessel.NextStep);
    }

    [Fact]
    public void Act_OnAStepThatTheRouteDoesNotHave_IsRefused()
    {
        var vessel = new SampleShop().Vessel;
        var watch = new RecordWatch(vessel);

        watch.AssertRefused(
            "step",
            vessel.BeginStep(15, SamplePeople.Operator, SampleTime.Start).Refusals
        );
    }

    /// <summary>What was tested before a weld was done again says nothing about the vessel after it.</summary>
    [Fact]
    public void Rework_OfAWeld_AsksForLaterTestsAndTheAcceptanceAgain()
    {
        var shop = new SampleShop().Reach(70);
        Assert.Equal(VesselState.Accepted, shop.Vessel.State);

        Accept.All(shop.Dispose(shop.Report(10), DispositionKind.Rework));

        Assert.Equal(
            "10 Ready, 20 Passed, 30 Waiting, 40 Waiting, 50 Waiting, 60 Waiting",
            string.Join(", ", shop.Vessel.Steps.Select(s => $"{s.Sequence} {s.State}"))
        );
        shop.Welded(10);
        Accept.All(shop.Close(shop.Findings[0]));
        Assert.Equal(VesselState.InWork, shop.Vessel.State);
        Assert.Equal(30, shop.Vessel.NextStep!.Sequence);
    }

    /// <summary>Never two steps that may be begun: the later one waits again.</summary>
    [Fact]
    public void Rework_OfAnEarlierStep_TakesTheTurnFromTheReadyOne()
    {
        var shop = new SampleShop().Reach(20);

        Accept.All(shop.Dispose(shop.Report(10), DispositionKind.Rework));

        Assert.Equal(StepState.Ready, shop.Vessel.Step(10)!.State);
        Assert.Equal(StepState.Waiting, shop.Vessel.Step(20)!.State);
    }

    private static SampleShop In(StepState state)
    {
        var shop = new SampleShop();
        if (state != StepState.Waiting)
        {
            shop.Reach(Step);
        }

        var vessel = shop.Vessel;
        switch (state)
        {
            case StepState.InProgress:
                Accept.All(vessel.BeginStep(Step, SamplePeople.Operator, shop.Now));
                break;
            case StepState.Passed:
                Accept.All(vessel.PassStep(Step, SamplePeople.Operator, shop.Now));
                break;
            case StepState.Failed or StepState.Waived:
                Accept.All(vessel.FailStep(Step, SamplePeople.Operator, shop.Now));
                break;
        }

        if (state == StepState.Waived)
        {
            Accept.All(shop.Dispose(shop.Report(Step), DispositionKind.UseAsIs));
        }

        Assert.Equal(state, vessel.Step(Step)!.State);
        return shop;
    }
}
