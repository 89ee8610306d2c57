using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Features.Findings.Contain;
using WeldTrace.Web.Features.Findings.ReportFinding;
using WeldTrace.Web.Features.Findings.ShowFinding;

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
                        Password = WorkingSite.Password,
                    },
                    vessel.Quality,
                    CancellationToken.None
                ),
            await Acts(vessel)
                .RecordRepairAsync(
                    id,
                    new()
                    {
                        Length = "30",
                        Note = "Welded.",
                        Password = WorkingSite.Password,
                    },
                    SamplePeople.Operator,
                    CancellationToken.None
                ),
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
        Assert.Equal(30, finding.Repair!.Length.Millimetres, 9);
        Assert.Equal(VesselState.OnHold, (await vessel.Site.ReadAsync<Vessel>(other.Id)).State);
        Assert.Equal(StepState.Ready, (await vessel.NowAsync()).Step(30)!.State);
        Assert.Equal(5, (await vessel.MeaningsAsync(id)).Count);
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
        var repair = await Acts(vessel)
            .RecordRepairAsync(
                id,
                new() { Length = "long", Password = WorkingSite.Password },
                vessel.Engineer,
                CancellationToken.None
            );

        Assert.Contains("Type", WorkingSite.Text(cause.Refusals), StringComparison.Ordinal);
        Assert.Equal(
            "role: missing:Reference missing:Members missing:Text",
            WorkingSite.Text(board.Refusals)
        );
        Assert.Equal("number:Length", WorkingSite.Text(repair.Refusals));
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
