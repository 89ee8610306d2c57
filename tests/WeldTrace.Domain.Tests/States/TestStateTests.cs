using WeldTrace.Domain.Findings;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.States;

/// <summary>What becomes of a recorded test: signed, or withdrawn before it is signed. Both close it.</summary>
public sealed class TestStateTests
{
    public enum TestState
    {
        Recorded,
        Signed,
        Withdrawn,
    }

    private const string Table = """
                   sign    withdraw
        Recorded   Signed  Withdrawn
        Signed     !state  !state
        Withdrawn  !state  !state
        """;

    public static TheoryData<TestState, string, string> Cells => StateTable.Read<TestState>(Table);

    [Theory]
    [MemberData(nameof(Cells))]
    public void LeakTest_InState_FollowsTheTable(TestState state, string act, string expected)
    {
        var shop = new SampleShop().Reach(30);
        AssertAct(
            shop,
            In(shop, state, Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Tight))),
            act,
            expected
        );
    }

    [Theory]
    [MemberData(nameof(Cells))]
    public void PressureTest_InState_FollowsTheTable(TestState state, string act, string expected)
    {
        var shop = new SampleShop().Reach(40);
        var test = Accept.Value(SampleTests.BeginPressure(shop));
        Accept.All(
            SampleTests.RecordStage(shop, test, 1, SampleTests.Hold("12.00", "11.99")),
            SampleTests.RecordStage(shop, test, 2, SampleTests.Back("130.001")),
            SampleTests.RecordStage(shop, test, 3, SampleTests.Hold("18.00", "17.99", 300))
        );

        AssertAct(shop, In(shop, state, test), act, expected);
    }

    [Theory]
    [MemberData(nameof(Cells))]
    public void Section_InState_FollowsTheTable(TestState state, string act, string expected)
    {
        var shop = new SampleShop().Reach(50);
        AssertAct(
            shop,
            In(
                shop,
                state,
                Accept.Value(SampleTests.RecordSection(shop, new SampleTests.Hook(100)))
            ),
            act,
            expected
        );
    }

    [Theory]
    [InlineData("1.99980", Verdict.Pass, StepState.Passed)]
    [InlineData("1.99790", Verdict.Undecided, StepState.Failed)]
    [InlineData("1.98000", Verdict.Fail, StepState.Failed)]
    public void Sign_PassAloneFinishesTheStep_AnythingElseOpensAFinding(
        string end,
        Verdict verdict,
        StepState step
    )
    {
        var shop = new SampleShop().Reach(30);
        var test = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Decay(end)));

        var signed = Accept.Value(SampleTests.Sign(shop, test));

        Assert.Equal(verdict, test.Verdict);
        Assert.Equal(step, shop.Vessel.Step(30)!.State);
        Assert.Equal(verdict != Verdict.Pass, signed.Finding is not null);
        Assert.Equal(verdict != Verdict.Pass, shop.Vessel.State == VesselState.OnHold);
    }

    [Fact]
    public void Sign_BeforeTheLadderIsDone_IsRefused()
    {
        var shop = new SampleShop().Reach(40);
        var test = Accept.Value(SampleTests.BeginPressure(shop));
        var watch = new RecordWatch(test, shop.Vessel);

        watch.AssertRefused("readings", SampleTests.Sign(shop, test).Refusals);
    }

    /// <summary>F17: who welded doesn't sign the inspection (ISO 25239-5:2020 4.3.2).</summary>
    [Fact]
    public void Sign_ByAWelderOfTheVessel_IsRefused()
    {
        var shop = new SampleShop().Reach(30);
        var test = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Tight));
        var both = SamplePeople.Operator with { Roles = [Role.Operator, Role.Inspector] };
        var watch = new RecordWatch(test, shop.Vessel);

        watch.AssertRefused("F17", SampleTests.Sign(shop, test, both).Refusals);
    }

    [Fact]
    public void Sign_OnAVesselScrappedMeanwhile_ChangesNothing()
    {
        var shop = new SampleShop().Reach(30);
        var test = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Tight));
        Accept.All(shop.Dispose(shop.Report(), DispositionKind.Scrap));
        var watch = new RecordWatch(test, shop.Vessel);

        watch.AssertRefused("state", SampleTests.Sign(shop, test).Refusals);
        Assert.False(test.IsSealed);
    }

    /// <summary>A test made before a weld was done again does not pass the vessel after it.</summary>
    [Fact]
    public void Sign_AfterTheStepWasOpenedAgain_IsRefused()
    {
        var shop = new SampleShop().Reach(30);
        var test = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Tight));
        var finding = shop.Report(30);
        Accept.All(shop.Dispose(finding, DispositionKind.Rework));
        var watch = new RecordWatch(test, shop.Vessel);

        watch.AssertRefused("stale", SampleTests.Sign(shop, test).Refusals);
        Accept.All(test.Withdraw("Tested before the rework.", SamplePeople.Inspector, shop.Now));
    }

    /// <summary>A bad result is not put aside by whoever found it: a second person looks.</summary>
    [Theory]
    [InlineData("1.99980", true)]
    [InlineData("1.99790", false)]
    [InlineData("1.98000", false)]
    public void Withdraw_ByItsInspector_OnlyWhenItPassed(string end, bool isAllowed)
    {
        var shop = new SampleShop().Reach(30);
        var test = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Decay(end)));
        var watch = new RecordWatch(test);

        var own = test.Withdraw("Wrong gauge.", SamplePeople.Inspector, shop.Now);

        Assert.Equal(isAllowed, own.IsAccepted);
        if (!isAllowed)
        {
            watch.AssertRefused("second-person", own.Refusals);
            Accept.All(test.Withdraw("Wrong gauge.", SamplePeople.QualityManager, shop.Now));
        }
    }

    [Fact]
    public void Record_WhileOneIsUnsigned_IsRefused()
    {
        var shop = new SampleShop().Reach(30);
        var first = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Leaking));
        var watch = new RecordWatch(first, shop.Vessel);

        watch.AssertRefused(
            "unsigned",
            SampleTests.RecordLeak(shop, SampleTests.Tight, null, first).Refusals
        );
    }

    private static void AssertAct(SampleShop shop, TestRecord test, string act, string expected)
    {
        var watch = new RecordWatch(test, shop.Vessel);
        var refusals =
            act == "sign"
                ? SampleTests.Sign(shop, test).Refusals
                : test.Withdraw("Wrong gauge.", SamplePeople.QualityManager, shop.Now).Refusals;

        watch.AssertOutcome(expected, refusals, StateOf(test));
    }

    private static TestRecord In(SampleShop shop, TestState state, TestRecord test)
    {
        if (state == TestState.Signed)
        {
            Accept.Value(SampleTests.Sign(shop, test));
        }

        if (state == TestState.Withdrawn)
        {
            Accept.All(test.Withdraw("Wrong gauge.", SamplePeople.QualityManager, shop.Now));
        }

        return test;
    }

    private static TestState StateOf(TestRecord test) =>
        test.SignedAt is not null ? TestState.Signed
        : test.Withdrawal is not null ? TestState.Withdrawn
        : TestState.Recorded;
}
