using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using static WeldTrace.Web.Tests.Features.Concessions.ConcessionShop;

namespace WeldTrace.Web.Tests.Features.Concessions;

/// <summary>No two concessions wait for the same signature at once.</summary>
public sealed class ConcessionRaceTests(PostgresServerFixture server)
{
    /// <summary>Two persons ask at the same moment: both have read that nobody asked, and the database lets one through.</summary>
    [Fact]
    public async Task Ask_TwoAtTheSameMoment_OneIsRefusedByTheDatabase()
    {
        await using var shop = await OpenAsync(server);
        await using var first = shop.Site.Database.CreateDbContext();
        await using var second = shop.Site.Database.CreateDbContext();
        var (one, other) = (
            await AskedAsync(first, shop, shop.Engineer),
            await AskedAsync(second, shop, shop.QualityManager)
        );

        first.Add(one);
        Accept.All(await first.SaveAsync(CancellationToken.None));
        second.Add(other);
        var late = await second.SaveAsync(CancellationToken.None);

        Assert.Equal("exists", Assert.Single(late.Refusals).Code);
        Assert.Contains(
            "asked for the same concession just now",
            late.Refusals[0].Sentence,
            StringComparison.Ordinal
        );
        Assert.Equal(
            one.Id,
            (await shop.Site.Database.ReadAsync(db => db.Concessions.SingleAsync())).Id
        );
        Assert.Empty(await shop.Site.LedgerProblemsAsync());
    }

    /// <summary>Once one is decided, the next may be asked for.</summary>
    [Fact]
    public async Task Ask_AgainAfterItWasDeclined_IsSaved()
    {
        await using var shop = await OpenAsync(server);
        var concession = Accept.Value(await AskAsync(shop, Form(shop)));
        Accept.All(
            await shop.Handler.DeclineAsync(
                concession.Id,
                new() { DeclinedBecause = "Not yet.", Password = WorkingSite.Password },
                shop.QualityManager,
                CancellationToken.None
            )
        );

        Accept.Value(await AskAsync(shop, Form(shop)));
    }

    private static async Task<Concession> AskedAsync(
        WeldTraceDbContext db,
        ConcessionShop shop,
        Actor actor
    )
    {
        var facts = await db.FindWeldGateFactsAsync(
            shop.Vessel.Serial,
            10,
            new WeldChoice(shop.Tool.Mark, Machine, shop.Welder, shop.Site.Clock.GetUtcNow()),
            CancellationToken.None
        );
        return Accept.Value(
            Concession.Ask(facts!, "F4", "The papers are on their way.", actor, facts!.Now)
        );
    }
}
