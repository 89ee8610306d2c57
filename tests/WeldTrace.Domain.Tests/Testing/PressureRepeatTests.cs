using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Testing;

/// <summary>A hold that did not pass is repeated by a signed decision of another person, and its first result is never lost (common practice, no source).</summary>
public sealed class PressureRepeatTests
{
    private readonly SampleShop _shop = new SampleShop().Reach(40);

    [Fact]
    public void FailedHold_Repeated_KeepsTheFirstResult()
    {
        var test = Begun();
        Accept.All(Stage(test, 1, "12.00", "9.00"));
        Assert.Equal(Verdict.Fail, test.Verdict);
        var first = test.VerdictSentence;

        Accept.All(Repeat(test));
        Assert.Null(test.Verdict);
        Assert.Empty(test.Stages);
        Accept.All(Stage(test, 1, "12.00", "12.00"));

        var kept = Assert.Single(test.Departures!);
        Assert.Equal(
            (DepartureKind.HoldRepeated, first, "9.00"),
            (kept.Kind, kept.Sentence, kept.Reading.EndPressure!.Digits)
        );
        Assert.Equal(
            ("A fitting leaked.", SamplePeople.Engineer.PrintedName),
            (kept.Decision!.Reason, kept.Decision.By)
        );
        Assert.Equal(Verdict.Pass, test.Stages[0].Verdict);
        Assert.Contains(first, test.Stages[0].Sentence, StringComparison.Ordinal);
        Assert.Contains(
            "repeated by decision of",
            test.Stages[0].Sentence,
            StringComparison.Ordinal
        );
    }

    /// <summary>A repeat that fails again fails the test, and both results are named.</summary>
    [Fact]
    public void FailedHold_FailingAgain_FailsTheTest()
    {
        var test = Begun();
        Accept.All(Stage(test, 1, "12.00", "9.00"), Repeat(test), Stage(test, 1, "12.00", "8.00"));

        Assert.Equal(Verdict.Fail, test.Verdict);
        Assert.Contains("before that:", test.VerdictSentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Repeat_OfWhatPassed_OrIsSigned_IsRefused()
    {
        var test = Begun();
        AssertRefused("state", test, Repeat(test));
        Accept.All(Stage(test, 1, "12.00", "12.00"));
        AssertRefused("state", test, Repeat(test));

        var failed = Begun();
        Accept.All(Stage(failed, 1, "12.00", "9.00"));
        Accept.Value(SampleTests.Sign(_shop, failed));
        AssertRefused("state", failed, Repeat(failed));
    }

    /// <summary>18 bar is the top of the ladder, 18.36 bar with its tolerance: beyond it the design authority decides, and no repeat makes it good.</summary>
    [Fact]
    public void Repeat_OfAHoldAboveTheLadder_IsRefused()
    {
        var test = Begun();
        Accept.All(Stage(test, 1, "19.00", "19.00"));

        Assert.Equal(Verdict.Fail, test.Verdict);
        AssertRefused("state", test, Repeat(test));
    }

    [Fact]
    public void Repeat_ByWhoeverTests_WithoutRole_OrReason_IsRefused()
    {
        var test = Begun();
        Accept.All(Stage(test, 1, "12.00", "9.00"));
        var both = SamplePeople.Inspector with { Roles = [Role.Inspector, Role.QualityManager] };

        AssertRefused("role", test, Repeat(test, SamplePeople.Inspector));
        AssertRefused("second-person", test, Repeat(test, both));
        AssertRefused("missing", test, Repeat(test, SamplePeople.Engineer, " "));
    }

    private static void AssertRefused(string code, PressureTest test, Outcome outcome)
    {
        Assert.Contains(outcome.Refusals, r => r.Code == code);
        Assert.DoesNotContain(test.Departures ?? [], d => d.Kind == DepartureKind.HoldRepeated);
    }

    private PressureTest Begun() => Accept.Value(SampleTests.BeginPressure(_shop));

    private Outcome Stage(PressureTest test, int number, string start, string end) =>
        test.RecordStage(
            number,
            SampleTests.Hold(start, end),
            _shop.Design,
            SamplePeople.Inspector,
            _shop.Now
        );

    private Outcome Repeat(
        PressureTest test,
        Actor? actor = null,
        string reason = "A fitting leaked."
    ) => test.RepeatHold(reason, _shop.Design, actor ?? SamplePeople.Engineer, _shop.Now);
}
