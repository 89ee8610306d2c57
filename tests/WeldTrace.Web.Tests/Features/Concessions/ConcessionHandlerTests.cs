using Microsoft.EntityFrameworkCore;
using Npgsql;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Loading;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using static WeldTrace.Web.Tests.Features.Concessions.ConcessionShop;

namespace WeldTrace.Web.Tests.Features.Concessions;

/// <summary>A shop whose operator holds no certificate: F4 forbids the run until two persons sign.</summary>
public sealed class ConcessionHandlerTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Ask_ThenGrant_LetsTheRunStartUnderItsLedger()
    {
        await using var shop = await OpenAsync();
        var concession = Accept.Value(await AskAsync(shop, Form(shop)));
        Assert.Contains((await StartAsync(shop)).Refusals, r => r.Code == "F4");

        Accept.All(await GrantAsync(shop, concession.Id, WorkingSite.Password));
        Accept.All(await StartAsync(shop));

        var run = await shop.Site.Database.ReadAsync(db => db.WeldRuns.SingleAsync());
        var rule = run.Gate.Single(v => v.RuleId == "F4");
        Assert.Equal((RuleStanding.Waived, concession.Id), (rule.Standing, rule.Concession!.Id));
        Assert.Equal(2, await shop.Site.EntriesAsync(concession.Id));
        Assert.Equal(
            [Concession.AskMeaning, Concession.GrantMeaning],
            (
                await shop.Handler.FindAsync(concession.Id, CancellationToken.None)
            )!.Signatures.Select(s => s.Meaning)
        );
        Assert.Empty(await shop.Site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Granted_StandsInTheHistoryAndBehindTheBundle()
    {
        await using var shop = await OpenAsync();
        var concession = Accept.Value(await AskAsync(shop, Form(shop)));
        Accept.All(await GrantAsync(shop, concession.Id, WorkingSite.Password));

        await using var db = shop.Site.Database.CreateDbContext();
        var history = (
            await db.FindVesselHistoryAsync(shop.Vessel.Serial, CancellationToken.None)
        )!;
        var records = await db.LoadRecordsBehindAsync(history, CancellationToken.None);

        Assert.Equal(ConcessionState.Granted, Assert.Single(history.Concessions).State);
        Assert.Contains(records, r => r.Id == concession.Id);
        Assert.Equal(2, history.SignaturesOf(history.Concessions[0]).Count);
    }

    [Fact]
    public async Task Ask_WrongPassword_SavesNothing()
    {
        await using var shop = await OpenAsync();
        var form = Form(shop);
        form.Password = "not it";

        var asked = await AskAsync(shop, form);

        Assert.Equal(nameof(form.Password), Assert.Single(asked.Refusals).Field);
        Assert.Equal(0, await shop.Site.Database.ReadAsync(db => db.Concessions.CountAsync()));
    }

    [Fact]
    public async Task Ask_NobodyChosenOrNoReason_NamesTheField()
    {
        await using var shop = await OpenAsync();
        var nobody = Form(shop);
        nobody.Welder = null;
        var silent = Form(shop);
        silent.Reason = " ";

        Assert.Equal(
            nameof(nobody.Welder),
            Assert.Single((await AskAsync(shop, nobody)).Refusals).Field
        );
        Assert.Equal(
            nameof(silent.Reason),
            Assert.Single((await AskAsync(shop, silent)).Refusals).Field
        );
    }

    [Theory]
    [InlineData("F7", "rule")]
    [InlineData("F1", "rule")]
    [InlineData("F99", "rule")]
    public async Task Ask_RuleThatForbidsNothing_IsRefused(string rule, string code)
    {
        await using var shop = await OpenAsync();

        var asked = await AskAsync(shop, Form(shop), rule);

        Assert.Contains(asked.Refusals, r => r.Code == code);
    }

    [Fact]
    public async Task Ask_NoSuchStep_IsRefused()
    {
        await using var shop = await OpenAsync();

        var asked = await AskAsync(shop, Form(shop), step: 30);

        Assert.Equal("step", Assert.Single(asked.Refusals).Code);
    }

    [Fact]
    public async Task Ask_ByTheOperator_IsRefused()
    {
        await using var shop = await OpenAsync();

        var asked = await AskAsync(shop, Form(shop), actor: shop.Welder);

        Assert.Contains(asked.Refusals, r => r.Code == "role");
    }

    [Fact]
    public async Task Grant_ByWhoeverAsked_OrWithoutPassword_IsRefused()
    {
        await using var shop = await OpenAsync();
        var concession = Accept.Value(await AskAsync(shop, Form(shop)));

        var own = await shop.Handler.GrantAsync(
            concession.Id,
            new() { Password = WorkingSite.Password },
            shop.Engineer,
            CancellationToken.None
        );
        var bare = await GrantAsync(shop, concession.Id, null);

        Assert.Contains(own.Refusals, r => r.Code == "second-person");
        Assert.False(bare.IsAccepted);
        Assert.Equal(1, await shop.Site.EntriesAsync(concession.Id));
    }

    [Fact]
    public async Task Decline_ClosesItAndTheRunStaysForbidden()
    {
        await using var shop = await OpenAsync();
        var concession = Accept.Value(await AskAsync(shop, Form(shop)));

        Accept.All(
            await shop.Handler.DeclineAsync(
                concession.Id,
                new() { DeclinedBecause = "Qualify him first.", Password = WorkingSite.Password },
                shop.QualityManager,
                CancellationToken.None
            )
        );

        Assert.Contains((await StartAsync(shop)).Refusals, r => r.Code == "F4");
        Assert.False((await GrantAsync(shop, concession.Id, WorkingSite.Password)).IsAccepted);
    }

    /// <summary>Not even the program's own database role changes what two people signed, or what was asked.</summary>
    [Theory]
    [InlineData("UPDATE concessions SET state = 'Declined'", true)]
    [InlineData("UPDATE concessions SET reason = 'Another one'", false)]
    [InlineData("DELETE FROM concessions", false)]
    public async Task Database_RefusesToChangeIt(string sql, bool isGranted)
    {
        await using var shop = await OpenAsync();
        var concession = Accept.Value(await AskAsync(shop, Form(shop)));
        if (isGranted)
        {
            Accept.All(await GrantAsync(shop, concession.Id, WorkingSite.Password));
        }

        await using var db = shop.Site.Database.CreateDbContext();
        var failure = await Assert.ThrowsAsync<PostgresException>(() =>
            db.Database.ExecuteSqlRawAsync(sql, CancellationToken.None)
        );
        Assert.Contains(
            failure.SqlState,
            new[] { PostgresErrorCodes.RestrictViolation, PostgresErrorCodes.InsufficientPrivilege }
        );
    }

    private Task<ConcessionShop> OpenAsync() => ConcessionShop.OpenAsync(server);
}
