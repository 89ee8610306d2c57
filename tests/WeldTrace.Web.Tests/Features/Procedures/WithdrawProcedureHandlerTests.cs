using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Procedures.Show;

namespace WeldTrace.Web.Tests.Features.Procedures;

public sealed class WithdrawProcedureHandlerTests(PostgresServerFixture server)
{
    private static readonly WithdrawProcedureForm Good = new()
    {
        Reason = "Hooks in two sections.",
        Password = WorkingSite.Password,
    };

    [Fact]
    public async Task HandleAsync_Released_WithdrawsWithSignatureAndLedgerEntry()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (id, actor) = await ReleasedAsync(site);

        Accept.All(await WithdrawAsync(site, id, Good, actor));

        var kept = await site.ReadAsync<ProcedureRevision>(id);
        Assert.Equal(ProcedureState.Withdrawn, kept.State);
        await using var db = site.Database.CreateDbContext();
        var signature = await db.Signatures.SingleAsync(
            s => s.SignedId == id,
            TestContext.Current.CancellationToken
        );
        Assert.Equal(ProcedureRevision.WithdrawMeaning, signature.Meaning);
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task HandleAsync_NoReasonWrongPasswordOrMissing_ChangesNothing()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (id, actor) = await ReleasedAsync(site);

        var unsaid = await WithdrawAsync(
            site,
            id,
            new() { Password = WorkingSite.Password },
            actor
        );
        var unsigned = await WithdrawAsync(site, id, new() { Reason = "Hooks." }, actor);
        var missing = await WithdrawAsync(site, Guid.CreateVersion7(SampleTime.Start), Good, actor);

        Assert.Equal("Reason", Assert.Single(unsaid.Refusals).Field);
        Assert.Equal("Password", Assert.Single(unsigned.Refusals).Field);
        Assert.Equal("missing", Assert.Single(missing.Refusals).Code);
        Assert.Equal(ProcedureState.Released, (await site.ReadAsync<ProcedureRevision>(id)).State);
    }

    [Fact]
    public async Task HandleAsync_AlreadyWithdrawn_IsRefused()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (id, actor) = await ReleasedAsync(site);
        Accept.All(await WithdrawAsync(site, id, Good, actor));

        var again = await WithdrawAsync(site, id, Good, actor);

        Assert.Equal("state", Assert.Single(again.Refusals).Code);
    }

    private static async Task<(Guid Id, Actor Actor)> ReleasedAsync(WorkingSite site)
    {
        var tool = SampleTools.Design();
        var revision = SampleProcedures.Released(tool);
        await site.Database.AddAsync(tool, revision);
        return (revision.Id, await site.EnterAsync("E. Ngineer", Role.Engineer));
    }

    private static Task<Outcome> WithdrawAsync(
        WorkingSite site,
        Guid id,
        WithdrawProcedureForm form,
        Actor actor
    ) =>
        new WithdrawProcedureHandler(site.Desk).HandleAsync(
            id,
            form,
            actor,
            TestContext.Current.CancellationToken
        );
}
