using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Ledger;

/// <summary>Ten thousand changes at random by the owner of the database: each must be found and named.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class MutationTests(DemoSite site, ITestOutputHelper output)
{
    private const int Wanted = 10_000;
    private const int MostTurns = 400;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task RandomMutations_OfAnyRecord_AreAllFoundAndNamed()
    {
        await using var forger = await Forger.OpenAsync(site);
        var tables = await forger.TablesAsync();
        var newest = await NewestAsync();
        var random = new Random(20_261_126);
        List<string> missed = [];
        var made = 0;
        for (var turn = 0; turn < MostTurns && made < Wanted; turn++)
        {
            List<Mutation> mutations = [];
            foreach (var table in tables)
            {
                await forger.KeepAsync(table.Name);
                mutations.AddRange(await Mutation.MakeAsync(forger, table, random));
            }

            var problems = (
                await site.ReadAsync(db => db.CheckLedgerAsync(Cancellation))
            ).Problems.ToHashSet();
            await forger.RestoreAsync();
            missed.AddRange(
                mutations.Where(m => !m.IsNamed(problems, newest)).Select(m => m.ToString())
            );
            made += mutations.Count;
        }

        output.WriteLine($"{made} mutations made, {made - missed.Count} found and named");
        Assert.InRange(made, Wanted, int.MaxValue);
        Assert.True(missed.Count == 0, "Not found:\n" + string.Join('\n', missed.Take(20)));
        Assert.Empty((await site.ReadAsync(db => db.CheckLedgerAsync(Cancellation))).Problems);
    }

    private async Task<IReadOnlyDictionary<Guid, long>> NewestAsync() =>
        await site.ReadAsync(db =>
            db.LedgerEntries.GroupBy(e => e.RecordId)
                .Select(g => new { g.Key, Number = g.Max(e => e.Number) })
                .ToDictionaryAsync(g => g.Key, g => g.Number)
        );
}
