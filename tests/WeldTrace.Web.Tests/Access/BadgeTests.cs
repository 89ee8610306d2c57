using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Tests.Features;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Who makes and withdraws badges, over HTTP.</summary>
public sealed class BadgeTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Badge_IsMadeOnce_AndWithdrawn_ByQuality_InTheLedger()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        var ada = await works.EnterAsync("Ada Voss", Role.Operator);
        var admin = await works.EnterAsync("Ines Vidal", Role.Administrator);
        await using var site = new RunningSite(works);
        using var tablet = await TabletVisit.RegisteredAsync(works, site);

        var paper = await tablet.MakeBadgeAsync(ada.PersonId);
        var first = await BadgeAsync();
        await tablet.MakeBadgeAsync(ada.PersonId);
        Assert.Equal("application/pdf", paper.Content.Headers.ContentType?.MediaType);
        Assert.NotNull(first);
        Assert.NotEqual(first, await BadgeAsync());
        await tablet.WithdrawBadgeAsync(ada.PersonId);
        Assert.Null(await BadgeAsync());
        Assert.Equal(4, await works.EntriesAsync(ada.PersonId));

        await tablet.MakeBadgeAsync(admin.PersonId);
        await tablet.SignInAsync("ada.voss");
        await tablet.MakeBadgeAsync(ada.PersonId);
        Assert.False(
            await works.Database.ReadAsync(db => db.Users.AnyAsync(a => a.BadgeSha256 != null))
        );
        Assert.Empty(await works.LedgerProblemsAsync());

        Task<string?> BadgeAsync() =>
            works.Database.ReadAsync(db =>
                db.Users.Where(a => a.PersonId == ada.PersonId)
                    .Select(a => a.BadgeSha256)
                    .SingleAsync()
            );
    }
}
