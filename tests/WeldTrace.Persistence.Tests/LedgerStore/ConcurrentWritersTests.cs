using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Persistence.Tests.LedgerStore;

public sealed class ConcurrentWritersTests(PostgresServerFixture server)
{
    private const int Writers = 8;
    private const int Saves = 25;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    /// <summary>Every second save of each writer takes a number that another took: it must leave no gap behind.</summary>
    [Fact]
    public async Task Save_ByManyAtOnceWithRefusalsBetween_NumbersEntriesWithoutGaps()
    {
        await using var site = await SiteDatabase.CreateAsync(server);

        var accepted = await Task.WhenAll(
            Enumerable.Range(0, Writers).Select(w => WriteAsync(site, w))
        );

        // A lot of a number that all share is entered by one of them; each number of a writer's own by that writer.
        Assert.Equal((Writers * Saves) + Saves, accepted.Sum());
        await using var db = site.CreateDbContext();
        var numbers = await db
            .LedgerEntries.OrderBy(e => e.Number)
            .Select(e => e.Number)
            .ToListAsync(Cancellation);
        Assert.Equal(Enumerable.Range(0, accepted.Sum()).Select(n => (long)n), numbers);
        Assert.Empty((await db.CheckLedgerAsync(Cancellation)).Problems);
    }

    private static async Task<int> WriteAsync(SiteDatabase site, int writer)
    {
        var accepted = 0;
        for (var i = 0; i < Saves; i++)
        {
            foreach (var number in (string[])[$"ML-{writer}-{i}", $"ML-all-{i}"])
            {
                await using var db = site.CreateDbContext();
                db.Add(SampleMaterial.Bare(number));
                accepted += (await db.SaveAsync(Cancellation)).IsAccepted ? 1 : 0;
            }
        }

        return accepted;
    }
}
