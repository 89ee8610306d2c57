using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.States;

/// <summary>A run while it welds, and once it has ended; with its log and signed it is closed.</summary>
public sealed class RunStateTests
{
    private const string Table = """
                     end     interrupt    log          shortLog     sign
        Running      Ended   Interrupted  !state       !state       !state
        Ended        !state  !state       Ended        Interrupted  !log
        Interrupted  !state  !state       Interrupted  Interrupted  !log
        """;

    private const string Judged = """
                     end     interrupt    log          shortLog     sign
        Ended        !state  !state       !log         !log         Ended
        Interrupted  !state  !state       !log         !log         Interrupted
        """;

    private const string Signed = """
                     end     interrupt    log          shortLog     sign
        Ended        !state  !state       !state       !state       !state
        Interrupted  !state  !state       !state       !state       !state
        """;

    public static TheoryData<WeldRunState, string, string> Cells =>
        StateTable.Read<WeldRunState>(Table);

    /// <summary>A run that still welds has no log yet.</summary>
    public static TheoryData<WeldRunState, string, string> JudgedCells =>
        StateTable.Read(Judged, WeldRunState.Running);

    public static TheoryData<WeldRunState, string, string> SignedCells =>
        StateTable.Read(Signed, WeldRunState.Running);

    [Theory]
    [MemberData(nameof(Cells))]
    public void Act_InState_FollowsTheTable(WeldRunState state, string act, string expected)
    {
        var shop = new SampleShop();
        AssertAct(shop, In(shop, state), act, expected);
    }

    [Theory]
    [MemberData(nameof(JudgedCells))]
    public void Act_OnAJudgedRun_FollowsTheTable(WeldRunState state, string act, string expected)
    {
        var shop = new SampleShop();
        var run = In(shop, state);
        Accept.Value(shop.TakeLog(run));

        AssertAct(shop, run, act, expected);
    }

    [Theory]
    [MemberData(nameof(SignedCells))]
    public void Act_OnASignedRun_FollowsTheTable(WeldRunState state, string act, string expected)
    {
        var shop = new SampleShop();
        var run = In(shop, state);
        Accept.Value(shop.TakeLog(run));
        Accept.All(run.Sign(shop.Vessel, SamplePeople.Operator, shop.Now));

        Assert.True(run.IsSealed);
        AssertAct(shop, run, act, expected);
    }

    [Theory]
    [InlineData("end")]
    [InlineData("interrupt")]
    public void Act_ByAnotherOperator_IsRefused(string act)
    {
        var shop = new SampleShop();
        var run = shop.Running();
        var watch = new RecordWatch(run, shop.Vessel, shop.Tool);

        watch.AssertRefused("operator", Do(shop, run, act, SamplePeople.SecondOperator));
    }

    [Fact]
    public void Sign_ByAnotherOperator_IsRefused()
    {
        var shop = new SampleShop();
        var run = shop.Ended();
        Accept.Value(shop.TakeLog(run));
        var watch = new RecordWatch(run, shop.Vessel);

        watch.AssertRefused(
            "operator",
            run.Sign(shop.Vessel, SamplePeople.SecondOperator, shop.Now).Refusals
        );
    }

    /// <summary>The step is passed by a run that ended as planned, and by no other.</summary>
    [Fact]
    public void Sign_OfAnEndedRun_PassesItsStep_OfAnInterruptedOneDoesNot()
    {
        var (good, bad) = (new SampleShop(), new SampleShop());
        good.Welded();
        var stopped = bad.Interrupted();
        Accept.Value(bad.TakeLog(stopped));
        Accept.All(stopped.Sign(bad.Vessel, SamplePeople.Operator, bad.Now));

        Assert.Equal(StepState.Passed, good.Vessel.Step(10)!.State);
        Assert.Equal(StepState.Failed, bad.Vessel.Step(10)!.State);
    }

    /// <summary>A step that was opened again while its run waited for the signature is welded again.</summary>
    [Fact]
    public void Sign_AfterTheStepWasOpenedAgain_DoesNotPassIt()
    {
        var shop = new SampleShop();
        var run = shop.Ended();
        Accept.Value(shop.TakeLog(run));
        Accept.All(shop.Dispose(shop.Report(), DispositionKind.Rework));

        Accept.All(run.Sign(shop.Vessel, SamplePeople.Operator, shop.Now));

        Assert.Equal(StepState.Ready, shop.Vessel.Step(10)!.State);
    }

    private static void AssertAct(SampleShop shop, WeldRun run, string act, string expected)
    {
        var watch = new RecordWatch(run, shop.Vessel, shop.Tool);

        watch.AssertOutcome(expected, Do(shop, run, act, SamplePeople.Operator), run.State);
    }

    private static IReadOnlyList<Refusal> Do(
        SampleShop shop,
        WeldRun run,
        string act,
        Actor actor
    ) =>
        act switch
        {
            "end" => run.End(null, shop.Tool, actor, shop.Now).Refusals,
            "interrupt" => run.Interrupt(
                run.PlannedPath * 0.3,
                "Pin broke.",
                shop.Vessel,
                shop.Tool,
                actor,
                shop.Now
            ).Refusals,
            "log" => shop.TakeLog(run, SampleRunLogs.Of(run)).Refusals,
            "shortLog" => shop.TakeLog(
                run,
                SampleRunLogs.Travelled(run.PlannedPath * 0.4, run)
            ).Refusals,
            "sign" => run.Sign(shop.Vessel, actor, shop.Now).Refusals,
            _ => throw new ArgumentOutOfRangeException(nameof(act), act, "Unknown act."),
        };

    private static WeldRun In(SampleShop shop, WeldRunState state) =>
        state switch
        {
            WeldRunState.Running => shop.Running(),
            WeldRunState.Ended => shop.Ended(),
            WeldRunState.Interrupted => shop.Interrupted(),
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };
}
