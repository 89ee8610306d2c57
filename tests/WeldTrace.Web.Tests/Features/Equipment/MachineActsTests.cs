using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Equipment.ReportEvent;
using WeldTrace.Web.Features.Equipment.ShowMachine;
using WeldTrace.Web.Features.Equipment.TestWelds;

namespace WeldTrace.Web.Tests.Features.Equipment;

public sealed class MachineActsTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Report_MoveWithPaper_KeepsBothWithALedgerEntry()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var machine = await EnterMachineAsync(site);

        var outcome = await ReportAsync(site, machine, MachineEventKind.Moved, WorkingSite.Paper());

        Assert.Empty(outcome.Refusals);
        var now = await site.ReadAsync<Machine>(machine);
        Assert.Equal(MachineState.NeedsReproducibilityTest, now.Standing.State);
        var file = Assert.Single(now.Events!).FileSha256;
        Assert.Equal(
            1,
            await site.Database.ReadAsync(db => db.Attachments.CountAsync(a => a.Sha256 == file))
        );
        Assert.Equal(2, await site.EntriesAsync(machine));
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Report_FileThatIsNoPaper_NothingKept()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var machine = await EnterMachineAsync(site);

        var outcome = await ReportAsync(
            site,
            machine,
            MachineEventKind.Moved,
            WorkingSite.Paper("MZ a program", "report.pdf")
        );

        Assert.Equal("file:File", WorkingSite.Text(outcome.Refusals));
        Assert.Null((await site.ReadAsync<Machine>(machine)).Events);
        Assert.Equal(0, await site.PapersAsync());
    }

    [Fact]
    public async Task Report_NoSuchMachine_Refused()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var outcome = await ReportAsync(site, Guid.AllBitsSet, MachineEventKind.Doubt, null);

        Assert.Equal("missing", Assert.Single(outcome.Refusals).Code);
    }

    [Fact]
    public async Task TestWelds_ThreeOfThem_AreOpenedBySignature()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var machine = await EnterMachineAsync(site);
        var toolDesign = SampleTools.Design();
        var procedure = SampleProcedures.Released(toolDesign);
        await site.Database.AddAsync(toolDesign, procedure);
        var welder = await site.EnterAsync("Dilys Owen", Role.Operator);
        var examiner = await site.EnterAsync("Emre Kaya", Role.Inspector);
        var manager = await site.EnterAsync("Gil Navarro", Role.QualityManager);
        Accept.All(await ReportAsync(site, machine, MachineEventKind.Dislodged, null));
        var form = new RecordTestWeldForm
        {
            ProcedureRevisionId = procedure.Id,
            WelderId = welder.PersonId,
            ExaminerId = examiner.PersonId,
            On = site.Today,
            Verdict = RecordTestWeldHandler.Satisfactory,
            Text = "Macro and two bends without indication",
        };
        for (var number = 1; number <= 3; number++)
        {
            form.File = WorkingSite.Paper($"%PDF-1.7 weld {number}");
            Accept.All(await WeldAsync(site, machine, form, examiner));
        }

        var early = await ReleaseAsync(site, machine, Machine.ReopenMeaning, manager, "wrong");
        var opened = await ReleaseAsync(
            site,
            machine,
            Machine.ReopenMeaning,
            manager,
            WorkingSite.Password
        );

        Assert.Equal("Password", Assert.Single(early.Refusals).Field);
        Assert.Empty(opened.Refusals);
        Assert.Equal(
            MachineState.InUse,
            (await site.ReadAsync<Machine>(machine)).StateOn(site.Today)
        );
        var signature = await site.Database.ReadAsync(db => db.Signatures.SingleAsync());
        Assert.Equal((machine, Machine.ReopenMeaning), (signature.SignedId, signature.Meaning));
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task TestWeld_WithoutFileAndVerdict_TellsTheFields()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var machine = await EnterMachineAsync(site);
        Accept.All(await ReportAsync(site, machine, MachineEventKind.Moved, null));

        var unread = await WeldAsync(site, machine, new(), SamplePeople.Inspector);
        var refused = await WeldAsync(
            site,
            machine,
            new()
            {
                On = site.Today,
                Verdict = RecordTestWeldHandler.Satisfactory,
                Text = "Macro",
            },
            SamplePeople.Inspector
        );

        Assert.Equal("day:On verdict:Verdict", WorkingSite.Text(unread.Refusals));
        Assert.Equal(
            "procedure:ProcedureRevisionId welder:WelderId F17:ExaminerId file:File",
            WorkingSite.Text(refused.Refusals)
        );
    }

    [Fact]
    public async Task Clear_LockedMachine_NeedsEngineerAndReason()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var machine = await EnterMachineAsync(site);
        var engineer = await site.EnterAsync("Ada Brandt", Role.Engineer);
        var welder = await site.EnterAsync("Cem Aydin", Role.Operator);
        Accept.All(await ReportAsync(site, machine, MachineEventKind.Doubt, null));

        var byWelder = await ReleaseAsync(
            site,
            machine,
            Machine.ClearMeaning,
            welder,
            WorkingSite.Password
        );
        var stale = await ReleaseAsync(
            site,
            machine,
            Machine.ReopenMeaning,
            engineer,
            WorkingSite.Password
        );
        var cleared = await ReleaseAsync(
            site,
            machine,
            Machine.ClearMeaning,
            engineer,
            WorkingSite.Password
        );

        Assert.Equal("role", Assert.Single(byWelder.Refusals).Code);
        Assert.Contains(stale.Refusals, r => r.Code == "state");
        Assert.Empty(cleared.Refusals);
    }

    private static async Task<Guid> EnterMachineAsync(WorkingSite site)
    {
        var machine = SampleMachines.Entered();
        await site.Database.AddAsync(machine);
        return machine.Id;
    }

    private static Task<Outcome> ReportAsync(
        WorkingSite site,
        Guid machine,
        MachineEventKind kind,
        Microsoft.AspNetCore.Http.IFormFile? file
    ) =>
        new ReportMachineHandler(site.Desk).HandleAsync(
            machine,
            new ReportMachineForm
            {
                Kind = kind.ToString(),
                On = site.Today,
                Text = "By forklift to bay 2",
                File = file,
            },
            SamplePeople.Operator,
            CancellationToken.None
        );

    private static Task<Outcome> WeldAsync(
        WorkingSite site,
        Guid machine,
        RecordTestWeldForm form,
        Actor actor
    ) =>
        new RecordTestWeldHandler(site.Desk, site.Database).HandleAsync(
            machine,
            form,
            actor,
            CancellationToken.None
        );

    private static Task<Outcome> ReleaseAsync(
        WorkingSite site,
        Guid machine,
        string meaning,
        Actor actor,
        string password
    ) =>
        new ReleaseMachineHandler(site.Desk).HandleAsync(
            machine,
            new ReleaseMachineForm
            {
                Meaning = meaning,
                Text = "Looked into it; as before.",
                Password = password,
            },
            actor,
            CancellationToken.None
        );
}
