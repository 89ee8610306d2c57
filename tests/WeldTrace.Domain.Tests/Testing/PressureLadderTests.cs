using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Tests.States;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Records;
using Xunit;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Tests.Testing;

/// <summary>
/// Floor rules F14 to F16 on the ladder of <see cref="SampleDesigns"/>: 12 bar for 600 s, back to zero, 18 bar for 300 s, each within
/// 2 %; a fall of at most 0.1 bar, a permanent set of at most 0.05 mm.
/// </summary>
public sealed class PressureLadderTests
{
    private readonly SampleShop _shop = new SampleShop().Reach(40);

    [Fact]
    public void Ladder_DoneAsPlanned_Passes()
    {
        var test = Begun();

        Accept.All(
            Stage(test, 1, SampleTests.Hold("12.00", "11.99")),
            Stage(test, 2, SampleTests.Back("130.010")),
            Stage(test, 3, SampleTests.Hold("18.00", "17.98", 300))
        );

        Assert.Equal(Verdict.Pass, test.Verdict);
        Assert.Equal(3, test.Stages.Count);
        Assert.Null(test.NextStage(_shop.Design.Content.Pressures));
    }

    [Fact]
    public void Begin_WithoutTheCautions_IsRefused()
    {
        var watch = new RecordWatch(_shop.Vessel);

        var outcome = SampleTests.BeginPressure(
            _shop,
            SampleTests.SetUp with
            {
                CautionsRead = false,
            }
        );

        watch.AssertRefused("F14", outcome.Refusals);
        Assert.Equal(nameof(PressureSetUp.CautionsRead), Assert.Single(outcome.Refusals).Field);
    }

    [Fact]
    public void Begin_OpensTheStep()
    {
        Begun();

        Assert.Equal(StepState.InProgress, _shop.Vessel.Step(40)!.State);
    }

    [Theory]
    [InlineData("DimensionName", "missing")]
    [InlineData("GaugeUncertainty", "reading")]
    [InlineData("TemperatureUncertainty", "reading")]
    [InlineData("AtmosphericPressure", "reading")]
    [InlineData("DimensionBefore", "reading")]
    [InlineData("DimensionUncertainty", "reading")]
    public void Begin_WithAnImpossibleField_NamesIt(string field, string code)
    {
        var good = SampleTests.SetUp;
        var bad = new Measured("-1", "?");
        var setUp = field switch
        {
            "DimensionName" => good with { DimensionName = "" },
            "GaugeUncertainty" => good with { GaugeUncertainty = bad },
            "TemperatureUncertainty" => good with { TemperatureUncertainty = bad },
            "AtmosphericPressure" => good with { AtmosphericPressure = bad },
            "DimensionBefore" => good with { DimensionBefore = bad },
            _ => good with { DimensionUncertainty = bad },
        };

        var refusal = Assert.Single(SampleTests.BeginPressure(_shop, setUp).Refusals);

        Assert.Equal((code, field), (refusal.Code, refusal.Field));
        RecordWatch.AssertReadable(refusal);
    }

    /// <summary>F15: the hold begins at the pressure of the ladder less its tolerance, 11.76 bar.</summary>
    [Theory]
    [InlineData("11.76", true)]
    [InlineData("11.75", false)]
    public void Stage_BelowItsPressure_IsNotRecorded(string start, bool isRecorded)
    {
        var test = Begun();
        var watch = new RecordWatch(test, _shop.Vessel);

        var outcome = Stage(test, 1, SampleTests.Hold(start, start));

        Assert.Equal(isRecorded, outcome.IsAccepted);
        if (!isRecorded)
        {
            watch.AssertRefused("F15", outcome.Refusals);
        }
    }

    /// <summary>F15: above the ladder's pressure and its tolerance, 18.36 bar, the vessel stops.</summary>
    [Theory]
    [InlineData("18.36", Verdict.Pass)]
    [InlineData("18.37", Verdict.Fail)]
    public void Proof_AboveItsPressure_Fails(string start, Verdict expected)
    {
        var test = Begun();
        Accept.All(
            Stage(test, 1, SampleTests.Hold("12.00", "12.00")),
            Stage(test, 2, SampleTests.Back("130.000")),
            Stage(test, 3, SampleTests.Hold(start, start, 300))
        );

        Assert.Equal(expected, test.Verdict);
    }

    /// <summary>F15: the hold lasts as long as the design says; a second less is no hold.</summary>
    [Theory]
    [InlineData(600, true)]
    [InlineData(599, false)]
    public void Hold_ShorterThanTheDesignSays_DoesNotPass(int seconds, bool isPass)
    {
        var test = Begun();
        Accept.All(Stage(test, 1, SampleTests.Hold("12.00", "12.00", seconds)));

        Assert.Equal(isPass, test.Stages[0].Verdict == Verdict.Pass);
    }

    /// <summary>F16: a fall of 0.1 bar lies inside the uncertainty of its own limit, so it is no pass; 0.2 bar fails.</summary>
    [Theory]
    [InlineData("11.99", Verdict.Pass)]
    [InlineData("11.90", Verdict.Undecided)]
    [InlineData("11.80", Verdict.Fail)]
    public void Hold_Fall_IsJudgedWithItsUncertainty(string end, Verdict expected)
    {
        var test = Begun();
        Accept.All(Stage(test, 1, SampleTests.Hold("12.00", end)));

        Assert.Equal(expected, test.Stages[0].Verdict);
    }

    [Fact]
    public void Hold_ThatFails_EndsTheTest()
    {
        var test = Begun();
        Accept.All(Stage(test, 1, SampleTests.Hold("12.00", "11.00")));
        var watch = new RecordWatch(test);

        Assert.Equal(Verdict.Fail, test.Verdict);
        watch.AssertRefused("stage", Stage(test, 2, SampleTests.Back("130.000")).Refusals);
    }

    /// <summary>The worst stage decides: one undecided stage is no passed test.</summary>
    [Fact]
    public void Ladder_WithAnUndecidedStage_IsUndecided()
    {
        var test = Begun();
        Accept.All(
            Stage(test, 1, SampleTests.Hold("12.00", "11.90")),
            Stage(test, 2, SampleTests.Back("130.000")),
            Stage(test, 3, SampleTests.Hold("18.00", "18.00", 300))
        );

        Assert.Equal(Verdict.Undecided, test.Verdict);
        Assert.Contains("operating pressure", test.VerdictSentence, StringComparison.Ordinal);
    }

    /// <summary>Permanent set against 0.05 mm.</summary>
    [Theory]
    [InlineData("130.010", Verdict.Pass)]
    [InlineData("130.050", Verdict.Undecided)]
    [InlineData("130.200", Verdict.Fail)]
    public void Return_Growth_IsJudgedWithItsUncertainty(string after, Verdict expected)
    {
        var test = Begun();
        Accept.All(
            Stage(test, 1, SampleTests.Hold("12.00", "12.00")),
            Stage(test, 2, SampleTests.Back(after))
        );

        Assert.Equal(expected, test.Stages[1].Verdict);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    [InlineData(7)]
    public void Stage_OutOfItsTurn_IsRefused(int number)
    {
        var test = Begun();
        var watch = new RecordWatch(test);

        watch.AssertRefused(
            "stage",
            Stage(test, number, SampleTests.Hold("12.00", "12.00")).Refusals
        );
    }

    [Fact]
    public void Stage_WithoutItsReadings_NamesEach()
    {
        var test = Begun();
        var watch = new RecordWatch(test);

        var outcome = Stage(test, 1, new StageReading(null, null, null, null, 0, null));

        watch.AssertRefused("reading", outcome.Refusals);
        Assert.Equal(
            ["StartPressure", "EndPressure", "StartTemperature", "EndTemperature", "HeldSeconds"],
            outcome.Refusals.Select(r => r.Field)
        );
    }

    private PressureTest Begun() => Accept.Value(SampleTests.BeginPressure(_shop));

    private Outcome Stage(PressureTest test, int number, StageReading reading) =>
        SampleTests.RecordStage(_shop, test, number, reading);
}
