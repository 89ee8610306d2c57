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
    public async Task<LedgerPage> ReadAsync(TableQuery query, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var rows = db.LedgerEntries.AsNoTracking();
        if (query.Filter("kind") is { Length: > 0 } kind)
        {
            rows = rows.Where(r => r.RecordKind == kind);
        }

        if (query.Filter("serial").Trim() is { Length: > 0 } serial)
        {
            rows = rows.Where(r =>
                db.Vessels.Any(v => v.Serial == serial && r.Vessels.Contains(v.Id))
            );
        }

        var frontier = MerkleFrontier.FromBytes(
            (await db.LedgerHeads.AsNoTracking().SingleAsync(cancellation)).Frontier
        );
        var page = await rows.OrderByDescending(r => r.Number)
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

    public async Task<LedgerEntry?> FindAsync(long number, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var row = await db
            .LedgerEntries.AsNoTracking()
            .SingleOrDefaultAsync(r => r.Number == number, cancellation);
        return row is null ? null : LedgerReading.Read(row);
    }

    public async Task<LedgerReport> CheckAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.CheckLedgerAsync(cancellation);
    }
}
