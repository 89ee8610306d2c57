using System.Runtime.CompilerServices;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;
using WeldTrace.Persistence;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Web.Components.Tables;

namespace WeldTrace.Web.Features.LedgerView;

/// <summary>A page of the ledger, newest entries first, with size and root.</summary>
public sealed record LedgerPage(
    IReadOnlyList<LedgerEntry> Entries,
    int Total,
    long Size,
    string RootHex
);

public sealed class LedgerHandler(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string KindFilter = "kind";
    public const string VesselFilter = "serial";

    private const string ByNumber = "number";
    private const string ByKind = "kind";

    public static IReadOnlyList<string> SortKeys { get; } = [ByNumber, ByKind];

    public async Task<LedgerPage> ReadAsync(TableQuery query, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var rows = Filter(db, query);
        var frontier = MerkleFrontier.FromBytes(
            (await db.LedgerHeads.AsNoTracking().SingleAsync(cancellation)).Frontier
        );
        var page = await Sort(rows, query)
            .Skip(query.Skip)
            .Take(query.PageSize)
            .ToListAsync(cancellation);
        return new LedgerPage(
            [.. page.Select(LedgerReading.Read)],
            await rows.CountAsync(cancellation),
            frontier.Size,
            Convert.ToHexStringLower(frontier.Root())
        );
    }

    /// <summary>Every entry that fits, one after the other.</summary>
    public async IAsyncEnumerable<LedgerEntry> ReadAllAsync(
        TableQuery query,
        [EnumeratorCancellation] CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var rows = Sort(Filter(db, query), query).AsAsyncEnumerable();
        await foreach (var row in rows.WithCancellation(cancellation))
        {
            yield return LedgerReading.Read(row);
        }
    }

    public async Task<LedgerEntry?> FindAsync(long number, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var row = await db
            .LedgerEntries.AsNoTracking()
            .SingleOrDefaultAsync(r => r.Number == number, cancellation);
        return row is null ? null : LedgerReading.Read(row);
    }

    private static IQueryable<LedgerRow> Filter(WeldTraceDbContext db, TableQuery query)
    {
        var rows = db.LedgerEntries.AsNoTracking();
        if (query.Filter(KindFilter).Trim() is { Length: > 0 } kind)
        {
            rows = rows.Where(r => r.RecordKind == kind);
        }

        if (query.Filter(VesselFilter).Trim() is { Length: > 0 } serial)
        {
            rows = rows.Where(r =>
                db.Vessels.Any(v => v.Serial == serial && r.Vessels.Contains(v.Id))
            );
        }

        return rows;
    }

    // Entries are numbered in the order of time.
    private static IQueryable<LedgerRow> Sort(IQueryable<LedgerRow> rows, TableQuery query) =>
        (query.Sort, query.Descending) switch
        {
            (ByKind, false) => rows.OrderBy(r => r.RecordKind).ThenByDescending(r => r.Number),
            (ByKind, true) => rows.OrderByDescending(r => r.RecordKind)
                .ThenByDescending(r => r.Number),
            (ByNumber, false) => rows.OrderBy(r => r.Number),
            _ => rows.OrderByDescending(r => r.Number),
        };
}
