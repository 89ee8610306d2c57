using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Tooling;

/// <summary>Floor rule F6 through its states: ISO 25239-5:2020 4.6.1, 4.6.2 and NASA-STD-5006A GWR 38 to 42 name what is asked for.</summary>
public sealed class ToolRulesTests
{
    private static readonly ToolDesign Design = SampleTools.Design();
    private static readonly ProcedureContent Procedure = SampleProcedures.Content(Design);

    [Fact]
    public void ForWelding_FreshToolInService_Holds() =>
        Assert.Equal(RuleStanding.Holds, Judge(SampleTools.InService(Design)).Standing);

    [Fact]
    public void ForWelding_NoTool_Forbids() => AssertForbids(Judge(null), "No tool is chosen");

    [Fact]
    public void ForWelding_OtherDesign_Forbids()
    {
        var other = SampleTools.Design("TD-16");

        AssertForbids(
            ToolRules.ForWelding(
                SampleTools.InService(other),
                other,
                Procedure,
                Task(0.4),
                SampleTime.Day
            ),
            "TD-16 rev A; the procedure asks for TD-15 rev A"
        );
    }

    [Fact]
    public void ForWelding_InStoreHeldRetired_Forbids()
    {
        var stored = Accept.Value(
            Tool.Enter("T-2", Design, SamplePeople.Engineer, SampleTime.Start)
        );
        var held = SampleTools.InService(Design);
        Accept.All(held.Hold("Dropped.", SamplePeople.Operator, SampleTime.Start));
        var retired = SampleTools.InService(Design);
        Accept.All(
            retired.Retire(
                RetirementReason.Breakage,
                "Pin sheared off.",
                SamplePeople.Operator,
                SampleTime.Start
            )
        );

        AssertForbids(Judge(stored), "in store");
        AssertForbids(Judge(held), "held (Dropped)");
        AssertForbids(Judge(retired), "retired");
    }

    /// <summary>40 m of life, 39.6 m used: a pass of 0.400 m fits, one of 0.401 m does not.</summary>
    [Theory]
    [InlineData(0.4, RuleStanding.Holds)]
    [InlineData(0.401, RuleStanding.Forbids)]
    public void ForWelding_LifeLeft_MustCoverThePass(double path, RuleStanding expected)
    {
        var tool = SampleTools.InService(Design);
        Use(tool, 39.6);
        Accept.All(Inspect(tool, ToolInspectionKind.Wear, "2.95", "4.95"));

        Assert.Equal(
            expected,
            ToolRules.ForWelding(tool, Design, Procedure, Task(path), SampleTime.Day).Standing
        );
    }

    [Fact]
    public void ForWelding_DesignWithoutLimits_Forbids()
    {
        var bare = Accept.Value(
            ToolDesign.Enter("TD-15", 1, Design.Geometry, SamplePeople.Engineer, SampleTime.Start)
        );
        var tool = SampleTools.InService(Design);

        AssertForbids(
            ToolRules.ForWelding(tool, bare, null, Task(0.4), SampleTime.Day),
            "states no wear limits"
        );
    }

    /// <summary>An inspection every 10 m: after 9.6 m a pass of 0.400 m fits, one of 0.401 m does not.</summary>
    [Theory]
    [InlineData(0.4, RuleStanding.Holds)]
    [InlineData(0.401, RuleStanding.Forbids)]
    public void ForWelding_InspectionByMetres_IsDueBeforeThePassEnds(
        double path,
        RuleStanding expected
    )
    {
        var tool = SampleTools.InService(Design);
        Use(tool, 9.6);

        var verdict = ToolRules.ForWelding(tool, Design, Procedure, Task(path), SampleTime.Day);

        Assert.Equal(expected, verdict.Standing);
        Assert.Equal(
            expected == RuleStanding.Forbids,
            verdict.Reason.Contains("WI-30", StringComparison.Ordinal)
        );
    }

    /// <summary>An inspection every 60 days from the first-use check.</summary>
    [Theory]
    [InlineData(60, RuleStanding.Holds)]
    [InlineData(61, RuleStanding.Forbids)]
    public void ForWelding_InspectionByDays_IsDueOnTheLastDay(int days, RuleStanding expected) =>
        Assert.Equal(
            expected,
            ToolRules
                .ForWelding(
                    SampleTools.InService(Design),
                    Design,
                    Procedure,
                    Task(0.4),
                    SampleTime.Day.AddDays(days)
                )
                .Standing
        );

    [Theory]
    [InlineData("NR4-0001", "J1", RuleStanding.Holds)]
    [InlineData("NR4-0001", "J2", RuleStanding.Forbids)]
    [InlineData("NR4-0002", "J1", RuleStanding.Forbids)]
    public void ForWelding_AnotherJoint_NeedsCleaningFirst(
        string vessel,
        string joint,
        RuleStanding expected
    )
    {
        var tool = SampleTools.InService(Design);
        Use(tool, 0.4);
        var task = new ToolTask(Length.FromMetres(0.4), vessel, joint);

        var before = ToolRules.ForWelding(tool, Design, Procedure, task, SampleTime.Day);
        Accept.All(Inspect(tool, ToolInspectionKind.Cleaned));
        var after = ToolRules.ForWelding(tool, Design, Procedure, task, SampleTime.Day);

        Assert.Equal(expected, before.Standing);
        Assert.Equal(RuleStanding.Holds, after.Standing);
    }

    [Fact]
    public void ForWelding_LogAfterTheCleaning_KeepsItCleaned()
    {
        var tool = SampleTools.InService(Design);
        var run = Guid.CreateVersion7(SampleTime.Start);
        Charge(tool, run, 0.42, ChargeBasis.PlannedPath);
        Accept.All(Inspect(tool, ToolInspectionKind.Cleaned));

        Charge(tool, run, 0.41, ChargeBasis.ProcessLog);

        Assert.True(tool.IsCleanedSinceLastUse);
        Assert.Equal(0.41, Assert.Single(tool.Uses).Length.Metres, 9);
    }

    private static RuleVerdict Judge(Tool? tool) =>
        ToolRules.ForWelding(tool, Design, Procedure, Task(0.4), SampleTime.Day);

    private static ToolTask Task(double metres) => new(Length.FromMetres(metres), "NR4-0001", "J1");

    private static void AssertForbids(RuleVerdict verdict, string words)
    {
        Assert.Equal(("F6", RuleStanding.Forbids), (verdict.RuleId, verdict.Standing));
        Assert.Contains(words, verdict.Reason, StringComparison.Ordinal);
    }

    private static void Use(Tool tool, double metres) =>
        Charge(tool, Guid.CreateVersion7(SampleTime.Start), metres, ChargeBasis.ProcessLog);

    private static void Charge(Tool tool, Guid run, double metres, ChargeBasis basis) =>
        tool.Charge(
            new ToolUse(run, "NR4-0001", Length.FromMetres(metres), basis, SampleTime.Start, "J1"),
            SamplePeople.Operator
        );

    private static Outcome Inspect(
        Tool tool,
        ToolInspectionKind kind,
        string? length = null,
        string? diameter = null
    ) =>
        tool.Inspect(
            new InspectionEntry(
                kind,
                true,
                "",
                length is null
                    ? null
                    : new PinReading(
                        new Measured(length, "mm"),
                        new Measured(diameter!, "mm"),
                        SampleInstruments.Caliper(),
                        "CAL-7"
                    ),
                null
            ),
            Design,
            SampleTime.Day,
            SamplePeople.Operator,
            SampleTime.Start
        );
}
