using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Findings.ReportFinding;
using WeldTrace.Web.Features.Findings.ShowFinding;

namespace WeldTrace.Web.Tests.Features.Findings;

public sealed class FindingActsTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Report_Whole_HoldsTheVessel_AndIsRecordedOnce()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 20);
        var form = Form();

        Accept.All(await ReportAsync(vessel, form, SamplePeople.Operator));
        Accept.All(await ReportAsync(vessel, form, SamplePeople.Operator));

        var finding = await vessel.Site.Database.ReadAsync(db => db.Findings.SingleAsync());
        Assert.Equal((form.Id, 1, 20), (finding.Id, finding.Number, finding.StepSequence));
        Assert.Equal(90, finding.Place!.Start!.Value.Degrees, 9);
        Assert.Equal(VesselState.OnHold, (await vessel.NowAsync()).State);
        Assert.Equal(1, await vessel.Site.EntriesAsync(finding.Id));
        Assert.Empty(await vessel.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Report_ByTheAuditor_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 10);

        var outcome = await ReportAsync(vessel, Form(), SamplePeople.Auditor);

        Assert.Equal("role:", WorkingSite.Text(outcome.Refusals));
        await NothingAsync(vessel);
    }

    [Fact]
    public async Task Report_OnAnUnknownVessel_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 10);

        var outcome = await Reporting(vessel)
            .HandleAsync("NR4-9999", Form(), vessel.Inspector, CancellationToken.None);

        Assert.Equal("missing:", WorkingSite.Text(outcome.Refusals));
    }

    [Fact]
    public async Task Report_WithUnreadableNumbers_TellsAll()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 10);
        var form = Form();
        (form.StepSequence, form.PassNumber, form.Start) = ("second", "x", "left");

        var outcome = await ReportAsync(vessel, form, vessel.Inspector);

        Assert.Equal(
            "number:StepSequence number:PassNumber number:Start",
            WorkingSite.Text(outcome.Refusals)
        );
        await NothingAsync(vessel);
    }

    [Fact]
    public async Task Report_WithoutWords_OnAStepThatIsNotThere_TellsBoth()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 10);
        var form = Form();
        (form.StepSequence, form.Description) = ("15", " ");

        var outcome = await ReportAsync(vessel, form, vessel.Inspector);

        Assert.Equal("missing:Description step:StepSequence", WorkingSite.Text(outcome.Refusals));
    }

    [Fact]
    public async Task Decide_UseAsIs_IsSigned_AndClosedByVerification()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 20);
        var id = await ReportedAsync(vessel);

        Accept.All(await DecideAsync(vessel, id, vessel.Inspector));
        Assert.Equal(FindingState.Disposed, (await ReadAsync(vessel, id)).State);
        Assert.Equal(VesselState.OnHold, (await vessel.NowAsync()).State);
        Accept.All(await CloseAsync(vessel, id, vessel.Quality));

        var finding = await ReadAsync(vessel, id);
        Assert.Equal(FindingState.Closed, finding.State);
        Assert.Equal("Quentin Hale", finding.Verification!.PrintedName);
        Assert.Equal(VesselState.InWork, (await vessel.NowAsync()).State);
        Assert.Equal(
            [Finding.DispositionMeaning, Finding.ClosingMeaning],
            await vessel.MeaningsAsync(id)
        );
        Assert.Equal(3, await vessel.Site.EntriesAsync(id));
        Assert.Empty(await vessel.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Decide_ByARoleThatMayNot_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 20);
        var id = await ReportedAsync(vessel);

        var outcome = await DecideAsync(vessel, id, vessel.Engineer);

        Assert.Equal("role:", WorkingSite.Text(outcome.Refusals));
        Assert.Equal(FindingState.Open, (await ReadAsync(vessel, id)).State);
        Assert.Empty(await vessel.MeaningsAsync(id));
    }

    [Theory]
    [InlineData(null, "Sound", WorkingSite.Password, "decision:Decision")]
    [InlineData("Melt", "Sound", WorkingSite.Password, "decision:Decision")]
    [InlineData("7", "Sound", WorkingSite.Password, "decision:Decision")]
    [InlineData("UseAsIs", "", WorkingSite.Password, "missing:Reason")]
    [InlineData("UseAsIs", "Sound", "seven quiet ankers", "password:Password")]
    public async Task Decide_WithAFault_IsRefused(
        string? decision,
        string reason,
        string password,
        string expected
    )
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 20);
        var id = await ReportedAsync(vessel);

        var outcome = await Deciding(vessel)
            .DecideAsync(
                id,
                new()
                {
                    Decision = decision,
                    Reason = reason,
                    Password = password,
                },
                vessel.Inspector,
                CancellationToken.None
            );

        Assert.Equal(expected, WorkingSite.Text(outcome.Refusals));
        Assert.Equal(FindingState.Open, (await ReadAsync(vessel, id)).State);
    }

    [Fact]
    public async Task DecideAndClose_OnAFindingThatIsNotThere_AreRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 20);

        var decided = await DecideAsync(vessel, Guid.Empty, vessel.Inspector);
        var closed = await CloseAsync(vessel, Guid.Empty, vessel.Inspector);

        Assert.Equal("missing:", WorkingSite.Text(decided.Refusals));
        Assert.Equal("missing:", WorkingSite.Text(closed.Refusals));
    }

    [Fact]
    public async Task Decide_ASecondTime_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 20);
        var id = await ReportedAsync(vessel);
        Accept.All(await DecideAsync(vessel, id, vessel.Inspector));

        var outcome = await DecideAsync(vessel, id, vessel.Quality, "Scrap");

        Assert.Equal("state:", WorkingSite.Text(outcome.Refusals));
        Assert.Single(await vessel.MeaningsAsync(id));
    }

    [Fact]
    public async Task Close_BeforeTheDecision_OrBeforeTheReworkIsDone_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 20);
        var id = await ReportedAsync(vessel);
        var early = await CloseAsync(vessel, id, vessel.Quality);
        Accept.All(await DecideAsync(vessel, id, vessel.Inspector, "Rework"));

        var undone = await CloseAsync(vessel, id, vessel.Quality);

        Assert.Equal("state:", WorkingSite.Text(early.Refusals));
        Assert.Equal("rework:", WorkingSite.Text(undone.Refusals));
        Assert.Equal(VesselState.OnHold, (await vessel.NowAsync()).State);
    }

    private static ReportFindingForm Form() =>
        new()
        {
            Id = Guid.CreateVersion7(SampleTime.Start),
            StepSequence = "20",
            Description = "Scratch across the seam",
            JointCode = "J1",
            PassNumber = "2",
            Start = "90",
        };

    private static ReportFindingHandler Reporting(RoutedVessel vessel) =>
        new(vessel.Site.Database, vessel.Site.Clock);

    private static DecideFindingHandler Deciding(RoutedVessel vessel) =>
        new(vessel.Site.Database, vessel.Site.Passwords, vessel.Site.Clock);

    private static Task<Outcome> ReportAsync(
        RoutedVessel vessel,
        ReportFindingForm form,
        Actor actor
    ) => Reporting(vessel).HandleAsync(vessel.Serial, form, actor, CancellationToken.None);

    private static async Task<Guid> ReportedAsync(RoutedVessel vessel)
    {
        var form = Form();
        Accept.All(await ReportAsync(vessel, form, vessel.Inspector));
        return form.Id;
    }

    private static Task<Outcome> DecideAsync(
        RoutedVessel vessel,
        Guid id,
        Actor actor,
        string decision = "UseAsIs"
    ) =>
        Deciding(vessel)
            .DecideAsync(
                id,
                new()
                {
                    Decision = decision,
                    Reason = "Within the drawing",
                    Password = WorkingSite.Password,
                },
                actor,
                CancellationToken.None
            );

    private static Task<Outcome> CloseAsync(RoutedVessel vessel, Guid id, Actor actor) =>
        Deciding(vessel)
            .CloseAsync(
                id,
                new() { Note = "Measured again", Password = WorkingSite.Password },
                actor,
                CancellationToken.None
            );

    private static Task<Finding> ReadAsync(RoutedVessel vessel, Guid id) =>
        vessel.Site.ReadAsync<Finding>(id);

    private static async Task NothingAsync(RoutedVessel vessel)
    {
        Assert.Equal(0, await vessel.Site.Database.ReadAsync(db => db.Findings.CountAsync()));
        Assert.NotEqual(VesselState.OnHold, (await vessel.NowAsync()).State);
    }
}
