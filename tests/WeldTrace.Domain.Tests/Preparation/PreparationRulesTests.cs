using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Preparation;

/// <summary>Floor rule F8: ISO 25239-5:2020 4.7.1, 4.7.2 and 4.12.2 name cleaning, joint preparation and fit-up.</summary>
public sealed class PreparationRulesTests
{
    private static readonly Vessel Vessel = SampleVessels.Planned(
        SampleDesigns.Released(),
        SampleMaterial.Lot()
    );

    private static readonly ProcedureContent Open = SampleProcedures.Content(SampleTools.Design());

    /// <summary>Four hours after cleaning; gap up to 0.30 mm, mismatch up to 0.20 mm.</summary>
    private static readonly ProcedureContent Limited = Open with
    {
        Details = ProcedureDetails.None with
        {
            CleaningLimit = new Measured("4", "h"),
            LargestGap = new Measured("0.30", "mm"),
            LargestMismatch = new Measured("0.20", "mm"),
        },
    };

    [Fact]
    public void ForWelding_ProcedureWithoutLimits_Holds() =>
        Assert.Equal(RuleStanding.Holds, Judge(Open, [], []).Standing);

    [Fact]
    public void ForWelding_NothingRecorded_TellsBoth()
    {
        var verdict = Judge(Limited, [], []);

        Assert.Equal(("F8", RuleStanding.Forbids), (verdict.RuleId, verdict.Standing));
        Assert.Contains("no cleaning", verdict.Reason, StringComparison.Ordinal);
        Assert.Contains("no fit-up", verdict.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, RuleStanding.Holds)]
    [InlineData(240, RuleStanding.Holds)]
    [InlineData(241, RuleStanding.Forbids)]
    public void ForWelding_TimeSinceCleaning_EndsWithTheLimit(int minutes, RuleStanding expected) =>
        Assert.Equal(
            expected,
            Judge(Limited, [Clean("J1", 0)], [FitUp("J1", "0.1", "0.1")], minutes).Standing
        );

    [Fact]
    public void ForWelding_CleanedAgain_CountsFromTheLast() =>
        Assert.Equal(
            RuleStanding.Holds,
            Judge(
                Limited,
                [Clean("J1", 300), Clean("J1", 0)],
                [FitUp("J1", "0.1", "0.1")],
                400
            ).Standing
        );

    [Fact]
    public void ForWelding_OtherJointPrepared_DoesNotCount() =>
        Assert.Equal(
            RuleStanding.Forbids,
            Judge(Limited, [Clean("J2", 0)], [FitUp("J2", "0.1", "0.1")]).Standing
        );

    /// <summary>The caliper's error of 0.02 mm is counted in: 0.28 mm passes a limit of 0.30 mm, 0.29 mm straddles it.</summary>
    [Theory]
    [InlineData("0.28", "0.18", "")]
    [InlineData("0.29", "0.18", "Gap of J1")]
    [InlineData("0.28", "0.19", "Mismatch of J1")]
    [InlineData("0.40", "0.30", "Gap of J1")]
    public void ForWelding_FitUp_MustLieInsideTheLimits(string gap, string mismatch, string named)
    {
        var verdict = Judge(Limited, [Clean("J1", 0)], [FitUp("J1", gap, mismatch)]);

        Assert.Equal(
            named.Length == 0 ? RuleStanding.Holds : RuleStanding.Forbids,
            verdict.Standing
        );
        Assert.Contains(named, verdict.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Record_Cleaning_BadInput_TellsAll()
    {
        var refusals = JointCleaning
            .Record(
                Vessel,
                "J1",
                "",
                false,
                SampleTime.Start.AddMinutes(1),
                SamplePeople.Auditor,
                SampleTime.Start
            )
            .Refusals;

        Assert.Equal(["role", "missing", "fixture", "future"], refusals.Select(r => r.Code));
    }

    [Fact]
    public void Record_FitUp_BadInput_TellsAll()
    {
        var refusals = JointFitUp
            .Record(
                Vessel,
                "J1",
                new Measured("-0.1", "mm"),
                new Measured("0.1", "in"),
                SampleInstruments.Calibrated("P-1", InstrumentKind.Pressure, "bar"),
                "P-1",
                "",
                SampleTime.Day,
                SamplePeople.Operator,
                SampleTime.Start
            )
            .Refusals;

        Assert.Equal(["gap", "mismatch", "F13"], refusals.Select(r => r.Code));
    }

    private static RuleVerdict Judge(
        ProcedureContent procedure,
        IReadOnlyList<JointCleaning> cleanings,
        IReadOnlyList<JointFitUp> fitUps,
        int minutesLater = 0
    ) =>
        PreparationRules.ForWelding(
            "J1",
            procedure,
            new PreparationFacts(cleanings, fitUps),
            SampleTime.Start.AddMinutes(minutesLater)
        );

    private static JointCleaning Clean(string joint, int minutesLater)
    {
        var at = SampleTime.Start.AddMinutes(minutesLater);
        return Accept.Value(
            JointCleaning.Record(Vessel, joint, "acetone", true, at, SamplePeople.Operator, at)
        );
    }

    private static JointFitUp FitUp(string joint, string gap, string mismatch) =>
        Accept.Value(
            JointFitUp.Record(
                Vessel,
                joint,
                new Measured(gap, "mm"),
                new Measured(mismatch, "mm"),
                SampleInstruments.Caliper(),
                "CAL-7",
                "",
                SampleTime.Day,
                SamplePeople.Operator,
                SampleTime.Start
            )
        );
}
