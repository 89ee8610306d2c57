using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Paths;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Features.Findings.Contain;
using WeldTrace.Web.Features.Findings.ReportFinding;
using WeldTrace.Web.Features.Findings.ShowFinding;
using WeldTrace.Web.Features.Welding;
using WeldTrace.Web.Features.Welding.EndRun;
using WeldTrace.Web.Features.Welding.SignRun;

namespace WeldTrace.Web.Tests.Features.Findings;

/// <summary>Cause, containment, board and repair through the handlers, on the real database.</summary>
public sealed class FindingRepairTests(PostgresServerFixture server)
{
    private static readonly Uri Everything = new(
        "http://site/findings/x/containment?tool=true&machine=true&procedure=true&operator=true&materiallot=true&instrument=true&from=2000-01-01&until=2100-01-01"
    );

    /// <summary>From the report to the closed finding: contained, decided by the board, repaired by another than who closes.</summary>
    [Fact]
    public async Task Finding_ContainedAndRepaired_IsClosed()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        var other = SampleVessels.Planned(vessel.Shop.Design, vessel.Shop.Lot, "NR4-0002");
        await vessel.Site.Database.AddAsync(other);
        await vessel.Site.Database.AddAsync(SampleCertificates.Welder(SamplePeople.Welders[0]));
        await vessel.Site.GiveAccountAsync(SamplePeople.Welders[0]);
        var id = await ReportedAsync(vessel);
        Accept.All(
            await Acts(vessel)
                .StateCauseAsync(
                    id,
                    new() { Type = "Cavity", Text = "Cold start." },
                    vessel.Inspector,
                    CancellationToken.None
                ),
            await HoldAsync(vessel, id, "NR4-0002"),
            await Acts(vessel)
                .RecordBoardAsync(
                    id,
                    new()
                    {
                        Reference = "MRB-4",
                        Members = "Edda Lund",
                        Text = "Repair.",
                        Password = WorkingSite.Password,
                    },
                    vessel.Quality,
                    CancellationToken.None
                ),
            await Deciding(vessel)
                .DecideAsync(
                    id,
                    new()
                    {
                        Decision = "Repair",
                        Reason = "Mend it.",
                        Procedure = vessel.Shop.Procedure.Id,
                        Place = "J1/2",
                        Start = "85",
                        End = "105",
                        Password = WorkingSite.Password,
                    },
                    vessel.Quality,
                    CancellationToken.None
                )
        );
        var run = await WeldAsync(vessel, id);
        Accept.All(
            await Deciding(vessel)
                .CloseAsync(
                    id,
                    new() { Note = "Seen.", Password = WorkingSite.Password },
                    vessel.Quality,
                    CancellationToken.None
                )
        );

        var finding = await vessel.Site.ReadAsync<Finding>(id);
        Assert.Equal(FindingState.Closed, finding.State);
        Assert.Equal((run.Id, run.Travelled), (finding.Repair!.Run!.Id, finding.Repair.Length));
        Assert.Equal((id, 85), (run.Repair!.Finding.Id, run.Repair.Start.Degrees));
        Assert.Equal(VesselState.OnHold, (await vessel.Site.ReadAsync<Vessel>(other.Id)).State);
        Assert.Equal(StepState.Ready, (await vessel.NowAsync()).Step(30)!.State);
        Assert.Equal(4, (await vessel.MeaningsAsync(id)).Count);
        Assert.Equal([SignRunHandler.Meaning], await vessel.MeaningsAsync(run.Id));
        Assert.Empty(await vessel.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Containment_ListsWhatIsShared_AndHoldsEachOnce()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        var lot = SampleMaterial.Lot("ML-900");
        var stranger = SampleVessels.Planned(vessel.Shop.Design, lot, "NR4-0003");
        var other = SampleVessels.Planned(vessel.Shop.Design, vessel.Shop.Lot, "NR4-0002");
        await vessel.Site.Database.AddAsync(lot, stranger, other);
        var id = await ReportedAsync(vessel);

        var view = await Containing(vessel)
            .FindAsync(id, Query(), whole: true, CancellationToken.None);
        var unlisted = await HoldAsync(vessel, id, "NR4-0003");
        Accept.All(
            await HoldAsync(vessel, id, null, all: true),
            await HoldAsync(vessel, id, null, all: true)
        );

        var row = Assert.Single(view!.Rows);
        Assert.Equal(("NR4-0002", "material lot"), (row.Serial, row.Shared));
        Assert.Equal("serial:Serials", WorkingSite.Text(unlisted.Refusals));
        var finding = await vessel.Site.ReadAsync<Finding>(id);
        Assert.Equal([1, 0], finding.Containments!.Select(c => c.Held.Count));
        Assert.Equal(VesselState.Planned, (await vessel.Site.ReadAsync<Vessel>(stranger.Id)).State);
    }

    [Fact]
    public async Task Acts_WithFaults_AreRefusedAtTheirFields()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        var id = await ReportedAsync(vessel);

        var cause = await Acts(vessel)
            .StateCauseAsync(id, new() { Type = "Rust" }, vessel.Inspector, CancellationToken.None);
        var board = await Acts(vessel)
            .RecordBoardAsync(
                id,
                new() { Password = WorkingSite.Password },
                vessel.Inspector,
                CancellationToken.None
            );
        var repair = await Deciding(vessel)
            .DecideAsync(
                id,
                new()
                {
                    Decision = "Repair",
                    Place = "J1/2",
                    Start = "here",
                    Password = WorkingSite.Password,
                },
                vessel.Quality,
                CancellationToken.None
            );

        Assert.Contains("Type", WorkingSite.Text(cause.Refusals), StringComparison.Ordinal);
        Assert.Equal(
            "role: missing:Reference missing:Members missing:Text",
            WorkingSite.Text(board.Refusals)
        );
        Assert.Equal("number:Start number:End", WorkingSite.Text(repair.Refusals));
    }

    private static TableQuery Query() => TableQuery.Read(Everything, ContainHandler.SortKeys);

    private static FindingActsHandler Acts(RoutedVessel vessel) => new(vessel.Site.Desk);

    private static ContainHandler Containing(RoutedVessel vessel) =>
        new(vessel.Site.Database, vessel.Site.Sites, vessel.Site.Desk);

    private static DecideFindingHandler Deciding(RoutedVessel vessel) =>
        new(vessel.Site.Database, vessel.Site.Passwords, vessel.Site.Clock);

    private static Task<Outcome> HoldAsync(
        RoutedVessel vessel,
        Guid id,
        string? serials,
        bool all = false
    ) =>
        Containing(vessel)
            .HoldAsync(
                id,
                Query(),
                new()
                {
                    Serials = serials,
                    HoldAll = all,
                    Reason = "Same lot.",
                    Password = WorkingSite.Password,
                },
                vessel.Inspector,
                CancellationToken.None
            );

    /// <summary>Welds the repair of the first finding through the handlers: started, ended, judged from its log, signed.</summary>
    private static async Task<WeldRun> WeldAsync(RoutedVessel vessel, Guid finding)
    {
        var form = new StartRunForm
        {
            Id = Guid.CreateVersion7(vessel.Site.Clock.GetUtcNow()),
            Tool = vessel.Shop.Tool.Mark,
            Machine = vessel.Shop.Machine.Name,
            Travel = vessel.Shop.Design.Content.Joint("J1")!.Pass(2)!.Travel,
            JointPreparation = true,
            FitUp = true,
            Parameters = true,
        };
        var number = (await vessel.Site.ReadAsync<Finding>(finding)).Number;
        var starting = new StartRunHandler(vessel.Site.Database, vessel.Site.Clock);
        Task<Outcome> StartAsync(StartRunForm sent) =>
            starting.HandleAsync(
                new(vessel.Serial, 0, number),
                sent,
                SamplePeople.Operator,
                CancellationToken.None
            );
        Accept.All(await StartAsync(form), await StartAsync(form));
        form.Id = Guid.CreateVersion7(vessel.Site.Clock.GetUtcNow());
        Assert.Contains((await StartAsync(form)).Refusals, r => r.Code == "F1");
        var id = (await vessel.Site.ReadAsync<Finding>(finding)).PlannedRepair!.Run!.Id;
        Accept.All(
            await new EndRunHandler(vessel.Site.Database, vessel.Site.Clock).HandleAsync(
                id,
                new EndRunForm(),
                SamplePeople.Operator,
                CancellationToken.None
            )
        );
        await TakeLogAsync(vessel, id);
        Accept.All(
            await new SignRunHandler(
                vessel.Site.Database,
                vessel.Site.Passwords,
                vessel.Site.Clock
            ).HandleAsync(
                id,
                new SignRunForm { Password = WorkingSite.Password },
                SamplePeople.Operator,
                CancellationToken.None
            )
        );
        return await vessel.Site.ReadAsync<WeldRun>(id);
    }

    private static async Task TakeLogAsync(RoutedVessel vessel, Guid id)
    {
        await using var db = vessel.Site.Database.CreateDbContext();
        var records = (await db.FindRunAsync(id, CancellationToken.None))!;
        Accept.Value(
            records.Run.TakeLog(
                SampleRunLogs.Of(records.Run),
                records.Revision.Content.Windows,
                records.Vessel,
                records.Tool,
                SamplePeople.Operator,
                vessel.Site.Clock.GetUtcNow()
            )
        );
        Accept.All(await db.SaveAsync(CancellationToken.None));
    }

    [Fact]
    public async Task RepairWeld_OfAFindingWithoutOne_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        await ReportedAsync(vessel);

        var outcome = await new StartRunHandler(
            vessel.Site.Database,
            vessel.Site.Clock
        ).HandleAsync(
            new(vessel.Serial, 0, 1),
            new() { Id = Guid.CreateVersion7(SampleTime.Start), Travel = RotationSense.Clockwise },
            SamplePeople.Operator,
            CancellationToken.None
        );

        Assert.Equal("repair:", WorkingSite.Text(outcome.Refusals));
    }

    private static async Task<Guid> ReportedAsync(RoutedVessel vessel)
    {
        var form = new ReportFindingForm
        {
            Id = Guid.CreateVersion7(SampleTime.Start),
            StepSequence = "20",
            Description = "Cavity at the surface",
            JointCode = "J1",
            PassNumber = "2",
            Start = "90",
        };
        Accept.All(
            await new ReportFindingHandler(vessel.Site.Database, vessel.Site.Clock).HandleAsync(
                vessel.Serial,
                form,
                vessel.Inspector,
                CancellationToken.None
            )
        );
        return form.Id;
    }
}
