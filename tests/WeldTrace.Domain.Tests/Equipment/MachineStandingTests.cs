using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Equipment;

public sealed class MachineStandingTests
{
    private static readonly DateOnly Today = DateOnly.FromDateTime(SampleTime.Start.Date);
    private static readonly Person Welder = SamplePeople.Entered("Dilys Owen", Role.Operator);
    private static readonly Person Examiner = SamplePeople.Entered("Emre Kaya", Role.Inspector);
    private static readonly ProcedureRevision Procedure = SampleProcedures.Released(
        SampleTools.Design()
    );

    /// <summary>ISO 25239-5:2020 4.4.1 to 4.4.3 name the events; a routine repair asks for nothing.</summary>
    [Theory]
    [InlineData(MachineEventKind.Installed, MachineState.NeedsReproducibilityTest)]
    [InlineData(MachineEventKind.Refurbished, MachineState.NeedsReproducibilityTest)]
    [InlineData(MachineEventKind.CriticalRepair, MachineState.NeedsReproducibilityTest)]
    [InlineData(MachineEventKind.Moved, MachineState.NeedsReproducibilityTest)]
    [InlineData(MachineEventKind.Dislodged, MachineState.NeedsReproducibilityTest)]
    [InlineData(MachineEventKind.OtherRepair, MachineState.InUse)]
    [InlineData(MachineEventKind.Malfunction, MachineState.Locked)]
    [InlineData(MachineEventKind.Doubt, MachineState.Locked)]
    public void Report_EachEvent_PutsTheMachineWhereTheStandardSays(
        MachineEventKind kind,
        MachineState expected
    )
    {
        var machine = SampleMachines.Entered();

        Accept.All(Report(machine, kind));

        Assert.Equal(expected, machine.Standing.State);
    }

    [Theory]
    [InlineData(MachineEventKind.TestWeld)]
    [InlineData(MachineEventKind.Cleared)]
    [InlineData(MachineEventKind.Reopened)]
    public void Report_ActWithAFormOfItsOwn_Refused(MachineEventKind kind)
    {
        var machine = SampleMachines.Entered();

        Assert.Contains(Report(machine, kind).Refusals, r => r.Code == "kind");
        Assert.Equal(MachineState.InUse, machine.Standing.State);
    }

    [Fact]
    public void Report_DoubtByAnyone_Locks()
    {
        foreach (var role in Enum.GetValues<Role>())
        {
            var machine = SampleMachines.Entered();
            var anyone = SamplePeople.Entered("Someone", role).AsActor();

            Accept.All(
                machine.Report(
                    MachineEventKind.Doubt,
                    Today,
                    "It hums.",
                    null,
                    Today,
                    anyone,
                    SampleTime.Start
                )
            );

            Assert.Equal(MachineState.Locked, machine.Standing.State);
        }
    }

    [Fact]
    public void Report_RepairByAuditor_Refused() =>
        Assert.Equal(
            "role",
            Assert
                .Single(
                    SampleMachines
                        .Entered()
                        .Report(
                            MachineEventKind.CriticalRepair,
                            Today,
                            "Spindle bearing replaced.",
                            null,
                            Today,
                            SamplePeople.Auditor,
                            SampleTime.Start
                        )
                        .Refusals
                )
                .Code
        );

    [Fact]
    public void Report_TomorrowWithoutWords_TellsBoth()
    {
        var refusals = SampleMachines
            .Entered()
            .Report(
                MachineEventKind.Doubt,
                Today.AddDays(1),
                " ",
                null,
                Today,
                SamplePeople.Operator,
                SampleTime.Start
            )
            .Refusals;

        Assert.Equal(["future", "missing"], refusals.Select(r => r.Code));
    }

    [Fact]
    public void Reopen_AfterThreeSatisfactoryWelds_InUse()
    {
        var machine = Moved();
        Weld(machine, true, true, true);

        Accept.All(Reopen(machine));

        Assert.Equal(MachineState.InUse, machine.Standing.State);
    }

    [Theory]
    [InlineData(new bool[0], 0)]
    [InlineData(new[] { true, true }, 2)]
    [InlineData(new[] { true, true, false, true, true }, 2)]
    [InlineData(new[] { true, true, true, false }, 0)]
    public void Reopen_TooFewInARow_Refused(bool[] welds, int counted)
    {
        var machine = Moved();
        Weld(machine, welds);

        var refusal = Assert.Single(Reopen(machine).Refusals);

        Assert.Equal("test-welds", refusal.Code);
        Assert.StartsWith($"{counted} of 3", refusal.Sentence, StringComparison.Ordinal);
        Assert.Equal(MachineState.NeedsReproducibilityTest, machine.Standing.State);
    }

    [Fact]
    public void Reopen_MovedAgainAfterTheWelds_CountsAnew()
    {
        var machine = Moved();
        Weld(machine, true, true, true);
        Accept.All(Report(machine, MachineEventKind.Dislodged));

        Assert.Equal("test-welds", Assert.Single(Reopen(machine).Refusals).Code);
    }

    [Fact]
    public void Clear_DoubtOnAMovedMachine_StillNeedsItsTestWelds()
    {
        var machine = Moved();
        Accept.All(Report(machine, MachineEventKind.Doubt));
        Assert.Equal(MachineState.Locked, machine.Standing.State);

        Accept.All(
            machine.Clear(
                "Belt was loose; tightened.",
                Today,
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );

        Assert.Equal(MachineState.NeedsReproducibilityTest, machine.Standing.State);
    }

    [Fact]
    public void Clear_ByOperatorOrWithoutReason_Refused()
    {
        var machine = SampleMachines.Entered();
        Accept.All(Report(machine, MachineEventKind.Doubt));

        var refusals = machine.Clear("", Today, SamplePeople.Operator, SampleTime.Start).Refusals;

        Assert.Equal(["missing", "role"], refusals.Select(r => r.Code));
        Assert.Equal(MachineState.Locked, machine.Standing.State);
    }

    [Fact]
    public void RecordTestWeld_EverythingMissing_TellsAll()
    {
        var machine = Moved();

        var refusals = machine
            .RecordTestWeld(
                null,
                Welder,
                Welder,
                true,
                Today.AddDays(-1),
                "Macro and bend",
                null,
                Today,
                SamplePeople.Inspector,
                SampleTime.Start
            )
            .Refusals;

        Assert.Equal(["order", "procedure", "F17", "file"], refusals.Select(r => r.Code));
        Assert.Single(machine.Events!);
    }

    [Fact]
    public void RecordTestWeld_MachineInUse_Refused() =>
        Assert.Contains(Weld(SampleMachines.Entered(), true)[0].Refusals, r => r.Code == "state");

    private static Machine Moved()
    {
        var machine = SampleMachines.Entered();
        Accept.All(Report(machine, MachineEventKind.Moved));
        return machine;
    }

    private static Outcome Report(Machine machine, MachineEventKind kind) =>
        machine.Report(
            kind,
            Today,
            "Seen at the start of the shift.",
            null,
            Today,
            SamplePeople.Operator,
            SampleTime.Start
        );

    private static Outcome Reopen(Machine machine) =>
        machine.Reopen("As before.", Today, SamplePeople.QualityManager, SampleTime.Start);

    private static List<Outcome> Weld(Machine machine, params bool[] verdicts) =>
        [
            .. verdicts.Select(isSatisfactory =>
                machine.RecordTestWeld(
                    Procedure,
                    Welder,
                    Examiner,
                    isSatisfactory,
                    Today,
                    "Macro and bend",
                    new string('a', 64),
                    Today,
                    SamplePeople.Inspector,
                    SampleTime.Start
                )
            ),
        ];
}
