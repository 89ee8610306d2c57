using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Equipment;

public sealed class MachineLogPushTests
{
    private static readonly Actor Administrator = new(
        Guid.Parse("00000000-0000-0000-0000-0000000000ad"),
        "Ines Vidal",
        [Role.Administrator]
    );

    [Fact]
    public void GiveLogToken_ByAnAdministrator_HoldsUntilItIsWithdrawn()
    {
        var machine = SampleMachines.Entered();
        Accept.All(
            machine.GiveLogToken("Bench computer", 365, "aa", Administrator, SampleTime.Start)
        );
        Assert.True(machine.TakesLogsFor("aa", SampleTime.Start));
        Assert.False(machine.TakesLogsFor("ab", SampleTime.Start));
        Assert.False(machine.TakesLogsFor("aa", SampleTime.Start.AddDays(365)));

        Accept.All(machine.WithdrawLogToken("Bench computer", Administrator, SampleTime.Start));

        Assert.False(machine.TakesLogsFor("aa", SampleTime.Start));
        Assert.Equal(SampleTime.Start, Assert.Single(machine.LogTokens!).WithdrawnAt);
    }

    [Fact]
    public void GiveLogToken_ByAnotherRole_Refused()
    {
        var machine = SampleMachines.Entered();
        var outcome = machine.GiveLogToken("x", 365, "aa", SamplePeople.Engineer, SampleTime.Start);

        Assert.Equal("role", Assert.Single(outcome.Refusals).Code);
        Assert.Null(machine.LogTokens);
    }

    [Fact]
    public void GiveLogToken_LabelThatHolds_RefusedUntilWithdrawn()
    {
        var machine = SampleMachines.Entered();
        Accept.All(machine.GiveLogToken("x", 365, "aa", Administrator, SampleTime.Start));

        var again = machine.GiveLogToken(" x ", 365, "ab", Administrator, SampleTime.Start);

        Assert.Equal("label", Assert.Single(again.Refusals).Code);
        Accept.All(machine.WithdrawLogToken("x", Administrator, SampleTime.Start));
        Accept.All(machine.GiveLogToken("x", 365, "ab", Administrator, SampleTime.Start));
    }

    [Fact]
    public void RememberLogColumns_CountsItsRevisions()
    {
        var machine = SampleMachines.Entered();
        var before = machine.LogColumnsRevision ?? 0;
        LogColumn[] columns = [new("t", "Time", "s", 1)];

        machine.RememberLogColumns(columns, SamplePeople.Operator, SampleTime.Start);
        machine.RememberLogColumns(columns, SamplePeople.Operator, SampleTime.Start);

        Assert.Equal(before + 1, machine.LogColumnsRevision);
    }
}
