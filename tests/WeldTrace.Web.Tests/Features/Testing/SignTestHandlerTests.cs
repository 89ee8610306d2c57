using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Testing.ShowTest;

namespace WeldTrace.Web.Tests.Features.Testing;

public sealed class SignTestHandlerTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Sign_ATestThatPassed_PassesTheStep()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        var test = await RecordedAsync(vessel, SampleTests.Tight);

        Accept.All(await SignAsync(vessel, test.Id, vessel.Inspector));

        Assert.Equal(StepState.Passed, (await vessel.NowAsync()).Step(30)!.State);
        Assert.Equal([test.MeaningFor(vessel.Inspector)], await vessel.MeaningsAsync(test.Id));
        Assert.Equal(2, await vessel.Site.EntriesAsync(test.Id));
        Assert.Empty(await vessel.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Sign_ATestThatFailed_OpensAFindingThatHoldsTheVessel()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        var test = await RecordedAsync(vessel, SampleTests.Leaking);

        Accept.All(await SignAsync(vessel, test.Id, vessel.Inspector));

        var finding = await vessel.Site.Database.ReadAsync(db => db.Findings.SingleAsync());
        Assert.Equal((FindingOrigin.LeakTest, test.Id), (finding.Origin, finding.EvidenceId));
        var now = await vessel.NowAsync();
        Assert.Equal((VesselState.OnHold, StepState.Failed), (now.State, now.Step(30)!.State));
    }

    [Fact]
    public async Task Sign_ByARoleThatMayNot_WithAWrongPassword_OrNothing_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        var test = await RecordedAsync(vessel, SampleTests.Tight);

        var byQuality = await SignAsync(vessel, test.Id, vessel.Quality);
        var wrong = await SignAsync(vessel, test.Id, vessel.Inspector, "seven quiet ankers");
        var ofNothing = await SignAsync(vessel, Guid.Empty, vessel.Inspector);

        Assert.Equal("role:", WorkingSite.Text(byQuality.Refusals));
        Assert.Equal("password:Password", WorkingSite.Text(wrong.Refusals));
        Assert.Equal("missing:", WorkingSite.Text(ofNothing.Refusals));
        await UnsignedAsync(vessel, test.Id);
    }

    [Fact]
    public async Task Sign_BySomebodyWhoWelded_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        var test = await RecordedAsync(vessel, SampleTests.Tight);

        var outcome = await SignAsync(vessel, test.Id, await vessel.WelderWhoInspectsAsync());

        Assert.Equal("F17:", WorkingSite.Text(outcome.Refusals));
        await UnsignedAsync(vessel, test.Id);
    }

    [Fact]
    public async Task Sign_Twice_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        var test = await RecordedAsync(vessel, SampleTests.Tight);
        Accept.All(await SignAsync(vessel, test.Id, vessel.Inspector));

        var again = await SignAsync(vessel, test.Id, vessel.Inspector);

        Assert.Equal("state:", WorkingSite.Text(again.Refusals));
        Assert.Single(await vessel.MeaningsAsync(test.Id));
    }

    [Fact]
    public async Task Withdraw_KeepsTheTestReadable_AndFreesTheStep()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        var test = await RecordedAsync(vessel, SampleTests.Tight);

        Accept.All(await WithdrawAsync(vessel, test.Id, vessel.Inspector));

        var kept = await vessel.Site.ReadAsync<LeakTest>(test.Id);
        Assert.Equal("Wrong gauge", kept.Withdrawal!.Reason);
        Assert.Equal([TestRecord.WithdrawalMeaning], await vessel.MeaningsAsync(test.Id));
        var signed = await SignAsync(vessel, test.Id, vessel.Inspector);
        Assert.Equal("state:", WorkingSite.Text(signed.Refusals));
        Assert.Empty(await vessel.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Withdraw_ByARoleThatMayNot_WithoutWords_OrNothing_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        var test = await RecordedAsync(vessel, SampleTests.Tight);

        var byEngineer = await WithdrawAsync(vessel, test.Id, vessel.Engineer);
        var wordless = await WithdrawAsync(vessel, test.Id, vessel.Inspector, "");
        var ofNothing = await WithdrawAsync(vessel, Guid.Empty, vessel.Inspector);

        Assert.Equal("role:", WorkingSite.Text(byEngineer.Refusals));
        Assert.Equal("missing:Reason", WorkingSite.Text(wordless.Refusals));
        Assert.Equal("missing:", WorkingSite.Text(ofNothing.Refusals));
        await UnsignedAsync(vessel, test.Id);
    }

    [Fact]
    public async Task Withdraw_AFailure_ByWhoRecordedIt_NeedsASecondPerson()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        var test = await RecordedAsync(vessel, SampleTests.Leaking);

        var alone = await WithdrawAsync(vessel, test.Id, vessel.Inspector);

        Assert.Equal("second-person:", WorkingSite.Text(alone.Refusals));
        Accept.All(await WithdrawAsync(vessel, test.Id, vessel.Quality));
    }

    private static async Task<LeakTest> RecordedAsync(RoutedVessel vessel, DecayObservation seen)
    {
        // The vessel that the test is of is the one in the database.
        await using var db = vessel.Site.Database.CreateDbContext();
        var stored = await db.Vessels.SingleAsync();
        var test = Accept.Value(
            LeakTest.RecordDecay(
                Guid.CreateVersion7(vessel.Site.Clock.GetUtcNow()),
                SampleTests.Facts(vessel.Shop, 30) with
                {
                    Vessel = stored,
                    Step = stored.Step(30)!,
                },
                seen,
                null,
                vessel.Inspector,
                vessel.Site.Clock.GetUtcNow()
            )
        );
        db.Add(test);
        Accept.All(await Persistence.Saving.SaveAsync(db, CancellationToken.None));
        return test;
    }

    private static Task<Outcome> SignAsync(
        RoutedVessel vessel,
        Guid id,
        Actor actor,
        string password = WorkingSite.Password
    ) =>
        Handler(vessel).SignAsync(id, new() { Password = password }, actor, CancellationToken.None);

    private static Task<Outcome> WithdrawAsync(
        RoutedVessel vessel,
        Guid id,
        Actor actor,
        string reason = "Wrong gauge"
    ) =>
        Handler(vessel)
            .WithdrawAsync(
                id,
                new() { Reason = reason, Password = WorkingSite.Password },
                actor,
                CancellationToken.None
            );

    private static SignTestHandler Handler(RoutedVessel vessel) =>
        new(vessel.Site.Database, vessel.Site.Passwords, vessel.Site.Clock);

    private static async Task UnsignedAsync(RoutedVessel vessel, Guid id)
    {
        var test = await vessel.Site.ReadAsync<LeakTest>(id);
        Assert.Equal((null, null), (test.SignedAt, test.Withdrawal));
        Assert.Empty(await vessel.MeaningsAsync(id));
        Assert.Equal(1, await vessel.Site.EntriesAsync(id));
    }
}
