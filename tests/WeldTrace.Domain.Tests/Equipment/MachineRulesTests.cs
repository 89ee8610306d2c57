using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Equipment;

public sealed class MachineRulesTests
{
    private static readonly DateOnly Today = DateOnly.FromDateTime(SampleTime.Start.Date);
    private static readonly ProcedureContent Procedure = SampleProcedures.Content(
        SampleTools.Design()
    );

    [Fact]
    public void ForWelding_NoMachine_Forbids() =>
        Assert.Equal(
            RuleStanding.Forbids,
            MachineRules.ForWelding(null, Procedure, Today).Standing
        );

    [Theory]
    [InlineData(MachineEventKind.Doubt, "locked")]
    [InlineData(MachineEventKind.Moved, "3 satisfactory test welds")]
    public void ForWelding_AfterAnEvent_ForbidsWithItsReason(MachineEventKind kind, string words)
    {
        var machine = SampleMachines.Entered();
        Accept.All(
            machine.Report(
                kind,
                Today,
                "By forklift to bay 2",
                null,
                Today,
                SamplePeople.Operator,
                SampleTime.Start
            )
        );

        var verdict = MachineRules.ForWelding(machine, Procedure, Today);

        Assert.Equal(("F5", RuleStanding.Forbids), (verdict.RuleId, verdict.Standing));
        Assert.Contains(words, verdict.Reason, StringComparison.Ordinal);
    }

    /// <summary>30 days from 1 January end on 31 January; 5 days of grace end on 5 February.</summary>
    [Theory]
    [InlineData("2026-01-10", MaintenanceStanding.Done, RuleStanding.Holds)]
    [InlineData("2026-01-31", MaintenanceStanding.Soon, RuleStanding.Holds)]
    [InlineData("2026-02-01", MaintenanceStanding.Overdue, RuleStanding.Holds)]
    [InlineData("2026-02-05", MaintenanceStanding.Overdue, RuleStanding.Holds)]
    [InlineData("2026-02-06", MaintenanceStanding.Locking, RuleStanding.Forbids)]
    public void ForWelding_ServiceDue_WarnsThenForbids(
        string day,
        MaintenanceStanding standing,
        RuleStanding expected
    )
    {
        var machine = Planned();
        var today = DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture);

        var verdict = MachineRules.ForWelding(machine, Procedure, today);

        Assert.Equal(standing, Assert.Single(machine.Maintenance).On(today));
        Assert.Equal(expected, verdict.Standing);
        Assert.Equal(
            standing is MaintenanceStanding.Overdue or MaintenanceStanding.Locking,
            verdict.Reason.Contains("guides", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void ForWelding_Serviced_CountsFromTheService()
    {
        var machine = Planned();
        Accept.All(
            machine.RecordService(
                "guides",
                new DateOnly(2026, 2, 6),
                "Dilys Owen",
                "Cleaned, greased",
                null,
                new DateOnly(2026, 2, 6),
                SamplePeople.Operator,
                SampleTime.Start
            )
        );

        Assert.Equal(new DateOnly(2026, 3, 8), Assert.Single(machine.Maintenance).DueOn);
        Assert.Equal(
            RuleStanding.Holds,
            MachineRules.ForWelding(machine, Procedure, new DateOnly(2026, 2, 7)).Standing
        );
    }

    /// <summary>The sample procedure goes up to 820 rev/min, 210 mm/min, 8.8 kN and 22 N·m.</summary>
    [Theory]
    [InlineData(820, 210, 8.8, 22, "")]
    [InlineData(819, 210, 8.8, 22, "Spindle speed")]
    [InlineData(820, 209, 8.8, 22, "Travel speed")]
    [InlineData(820, 210, 8.7, 22, "Axial force")]
    [InlineData(820, 210, 8.8, 21.9, "Torque")]
    public void ForWelding_WindowBeyondTheMachine_Forbids(
        double spindle,
        double travel,
        double force,
        double torque,
        string named
    )
    {
        var machine = SampleMachines.Entered();
        Accept.All(
            machine.Describe(
                new MachineCapability(
                    RotationSpeed.FromRevolutionsPerMinute(spindle),
                    Speed.FromMillimetresPerMinute(travel),
                    Force.FromKilonewtons(force),
                    Torque.FromNewtonMetres(torque)
                ),
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );

        var verdict = MachineRules.ForWelding(machine, Procedure, Today);

        Assert.Equal(
            named.Length == 0 ? RuleStanding.Holds : RuleStanding.Forbids,
            verdict.Standing
        );
        Assert.Contains(named, verdict.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Describe_NothingOrLess_Refused() =>
        Assert.Equal(
            "capability",
            Assert
                .Single(
                    SampleMachines
                        .Entered()
                        .Describe(
                            new MachineCapability(null, null, Force.FromKilonewtons(0), null),
                            SamplePeople.Engineer,
                            SampleTime.Start
                        )
                        .Refusals
                )
                .Code
        );

    [Fact]
    public void Describe_Plate_KeepsWhatIsKnownAndLeavesItWithoutOne()
    {
        var machine = SampleMachines.Entered();
        var capability = new MachineCapability(null, null, Force.FromKilonewtons(60), null);

        Accept.All(
            machine.Describe(
                capability,
                SamplePeople.Engineer,
                SampleTime.Start,
                new MachineNameplate(" own make ", "GW-60", " ")
            )
        );
        Accept.All(machine.Describe(capability, SamplePeople.Engineer, SampleTime.Start));
        var refused = machine.Describe(
            capability,
            SamplePeople.Engineer,
            SampleTime.Start,
            new MachineNameplate(new string('x', Machine.LongestText + 1), "GW\0", null)
        );

        Assert.Equal(new MachineNameplate("own make", "GW-60", null), machine.Nameplate);
        Assert.Equal(["Maker", "Model"], refused.Refusals.Select(r => r.Field));
    }

    [Fact]
    public void PlanMaintenance_BadNumbers_TellsAll()
    {
        var refusals = SampleMachines
            .Entered()
            .PlanMaintenance(
                new MaintenanceItem("", "", 0, 366, Today),
                SamplePeople.Engineer,
                SampleTime.Start
            )
            .Refusals;

        Assert.Equal(["missing", "missing", "interval", "grace"], refusals.Select(r => r.Code));
    }

    private static Machine Planned()
    {
        var machine = SampleMachines.Entered();
        Accept.All(
            machine.PlanMaintenance(
                new MaintenanceItem("guides", "Clean and grease", 30, 5, new DateOnly(2026, 1, 1)),
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );
        return machine;
    }
}
