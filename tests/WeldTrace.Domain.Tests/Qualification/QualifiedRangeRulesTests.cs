using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Qualification;

public sealed class QualifiedRangeRulesTests
{
    private readonly ToolDesign _design = SampleTools.Design();

    [Fact]
    public void ForWelding_AsTested_Holds()
    {
        var verdict = QualifiedRangeRules.ForWelding(Task(), SampleProcedures.Released(_design));

        Assert.Equal(RuleStanding.Holds, verdict.Standing);
        Assert.Contains("WPQR-1", verdict.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void ForWelding_NoProcedureOrNoQualification_Forbids()
    {
        Assert.Equal(RuleStanding.Forbids, QualifiedRangeRules.ForWelding(Task(), null).Standing);
        Assert.Contains(
            "no qualification record",
            QualifiedRangeRules.ForWelding(Task(), SampleProcedures.OnTrial(_design)).Reason,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ForWelding_EverythingElse_IsToldAtOnce()
    {
        var task = Task();
        var design = task.Design with { Temper = "T4" };
        var joint = task.Joint with { Thickness = Length.FromMillimetres(4), JointType = "butt" };
        var tool = SampleTools.InService(SampleTools.Design("TD-99"));

        var verdict = QualifiedRangeRules.ForWelding(
            new RangeTask(joint, design, null, tool),
            SampleProcedures.Released(_design)
        );

        Assert.Equal(RuleStanding.Forbids, verdict.Standing);
        Assert.Contains("6061-T4", verdict.Reason, StringComparison.Ordinal);
        Assert.Contains("4 mm", verdict.Reason, StringComparison.Ordinal);
        Assert.Contains("butt joint", verdict.Reason, StringComparison.Ordinal);
        Assert.Contains("TD-99", verdict.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("force", null, RuleStanding.Holds)]
    [InlineData("position", null, RuleStanding.Forbids)]
    [InlineData("force", 130.0, RuleStanding.Holds)]
    [InlineData("force", 132.0, RuleStanding.Forbids)]
    public void ForWelding_ControlModeAndDiameter_AreThoseOfTheTest(
        string mode,
        double? outerDiameter,
        RuleStanding standing
    )
    {
        // The sample vessel is 124 mm inside with a wall of 3 mm: 130 mm outside.
        var machine = SampleMachines.Entered();
        var draft = SampleProcedures.Draft(_design);
        Accept.All(
            draft.Edit(
                draft.Title,
                draft.Content with
                {
                    Details = new ProcedureDetails
                    {
                        ControlMode = "force",
                        OuterDiameter = outerDiameter is { } d ? Length.FromMillimetres(d) : null,
                    },
                },
                SamplePeople.Engineer,
                SampleTime.Start
            ),
            draft.PutOnTrial(SamplePeople.Engineer, SampleTime.Start)
        );
        SampleProcedures.Release(draft, SampleQualifications.Signed(draft, _design).Record);
        var other = Accept.Value(
            Domain.Equipment.Machine.Enter(
                "Bench",
                "small",
                mode,
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );

        var verdict = QualifiedRangeRules.ForWelding(
            Task() with
            {
                Machine = mode == machine.ControlMode ? machine : other,
            },
            draft
        );

        Assert.Equal(standing, verdict.Standing);
    }

    private static RangeTask Task()
    {
        var design = SampleDesigns.Content();
        return new RangeTask(design.Joints[0], design, null, null);
    }
}
