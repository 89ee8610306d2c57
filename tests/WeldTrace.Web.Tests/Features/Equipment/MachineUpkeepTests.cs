using WeldTrace.Domain.Equipment;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Equipment;
using WeldTrace.Web.Features.Equipment.Describe;
using WeldTrace.Web.Features.Equipment.Maintain;

namespace WeldTrace.Web.Tests.Features.Equipment;

public sealed class MachineUpkeepTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Maintenance_PlannedServicedDropped_IsKept()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var machine = await EnterMachineAsync(site);
        var handler = new MaintainMachineHandler(site.Desk);
        var plan = new PlanMaintenanceForm
        {
            Name = "guides",
            Work = "WI-12",
            EveryDays = "30",
            GraceDays = "5",
            From = site.Today,
        };
        Accept.All(
            await handler.PlanAsync(machine, plan, SamplePeople.Engineer, CancellationToken.None)
        );
        var service = new RecordServiceForm
        {
            Item = "guides",
            On = site.Today,
            DoneBy = "Dilys Owen",
            Text = "Cleaned",
            File = WorkingSite.Paper(),
        };
        Accept.All(
            await handler.RecordAsync(
                machine,
                service,
                SamplePeople.Operator,
                CancellationToken.None
            )
        );

        var due = Assert.Single((await site.ReadAsync<Machine>(machine)).Maintenance);
        Assert.Equal(site.Today.AddDays(30), due.DueOn);
        Assert.NotNull(due.Last!.FileSha256);
        var unread = await handler.PlanAsync(
            machine,
            new() { EveryDays = "monthly" },
            SamplePeople.Engineer,
            CancellationToken.None
        );
        Assert.Equal("number:EveryDays day:From", WorkingSite.Text(unread.Refusals));
        Accept.All(
            await handler.DropAsync(
                machine,
                new() { Item = "guides", Reason = "Replaced by rails" },
                SamplePeople.Engineer,
                CancellationToken.None
            )
        );
        Assert.Empty((await site.ReadAsync<Machine>(machine)).Maintenance);
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Describe_WordsForNumbers_TellsEach()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var machine = await EnterMachineAsync(site);
        var handler = new DescribeMachineHandler(site.Desk);

        var refused = await handler.HandleAsync(
            machine,
            new CapabilityForm { Force = "a lot", Torque = "1,5x" },
            SamplePeople.Engineer,
            CancellationToken.None
        );
        Accept.All(
            await handler.HandleAsync(
                machine,
                new CapabilityForm
                {
                    Force = "60",
                    SpindleSpeed = "3000",
                    Maker = "own make",
                    SerialNumber = "0417",
                },
                SamplePeople.Engineer,
                CancellationToken.None
            )
        );

        Assert.Equal("number:Force number:Torque", WorkingSite.Text(refused.Refusals));
        var described = await site.ReadAsync<Machine>(machine);
        Assert.Equal(new MachineNameplate("own make", null, "0417"), described.Nameplate);
        var capability = described.Capability!;
        Assert.Equal(60, capability.Force!.Value.Kilonewtons, 9);
        Assert.Null(capability.Torque);
    }

    private static async Task<Guid> EnterMachineAsync(WorkingSite site)
    {
        var machine = SampleMachines.Entered();
        await site.Database.AddAsync(machine);
        return machine.Id;
    }
}
