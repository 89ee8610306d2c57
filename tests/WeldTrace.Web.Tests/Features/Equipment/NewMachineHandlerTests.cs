using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Features.Equipment.Machines;
using WeldTrace.Web.Features.Equipment.NewMachine;

namespace WeldTrace.Web.Tests.Features.Equipment;

public sealed class NewMachineHandlerTests(PostgresServerFixture server)
{
    [Fact]
    public async Task HandleAsync_Complete_EntersMachineWithLedgerEntry()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var machine = await EnterAsync(site, "Gantry 2", SamplePeople.Engineer);

        Assert.True(machine.IsAccepted);
        var id = machine.Value.Id;
        Assert.Equal(
            1,
            await site.Database.ReadAsync(db => db.LedgerEntries.CountAsync(e => e.RecordId == id))
        );
    }

    [Fact]
    public async Task HandleAsync_NameTaken_NamesTheField()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        await site.Database.AddAsync(SampleMachines.Entered("Gantry 2"));

        var machine = await EnterAsync(site, "Gantry 2", SamplePeople.Engineer);

        Assert.Equal(nameof(NewMachineForm.Name), Assert.Single(machine.Refusals).Field);
    }

    [Fact]
    public async Task HandleAsync_Operator_Refused()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var machine = await EnterAsync(site, "Gantry 2", SamplePeople.Operator);

        Assert.Equal("role", Assert.Single(machine.Refusals).Code);
        Assert.Equal(0, await site.Database.ReadAsync(db => db.Machines.CountAsync()));
    }

    [Fact]
    public async Task HandleAsync_NewlyInstalled_StatesItsCapabilityAndNeedsTestWelds()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var machine = await EnterAsync(
            site,
            "Gantry 3",
            SamplePeople.QualityManager,
            form => (form.IsNewlyInstalled, form.Force) = (true, "60")
        );

        var entered = await site.ReadAsync<Machine>(Accept.Value(machine).Id);
        Assert.Equal(MachineState.NeedsReproducibilityTest, entered.Standing.State);
        Assert.Equal(60, entered.Capability!.Force!.Value.Kilonewtons, 9);
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task ReadAsync_NameWithWildcard_MeansItself()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        await site.Database.AddAsync(
            SampleMachines.Entered("Gantry 50%"),
            SampleMachines.Entered("Gantry 500")
        );
        var query = TableQuery.Read(
            new Uri("http://localhost/equipment?name-has=50%25&sort=-name"),
            MachineListReader.SortKeys
        );

        var (page, total) = await new MachineListReader(site.Database).ReadAsync(
            query,
            whole: false,
            CancellationToken.None
        );

        Assert.Equal((1, "Gantry 50%"), (total, Assert.Single(page).Name));
    }

    private static Task<Outcome<Machine>> EnterAsync(
        WorkingSite site,
        string name,
        Actor actor,
        Action<NewMachineForm>? edit = null
    )
    {
        var form = new NewMachineForm
        {
            Name = name,
            Description = "serial 4471",
            ControlMode = "force",
        };
        edit?.Invoke(form);
        return new NewMachineHandler(site.Database, site.Day, site.Clock).HandleAsync(
            form,
            actor,
            CancellationToken.None
        );
    }
}
