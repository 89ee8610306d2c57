using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Web.Components.Tables;

namespace WeldTrace.Web.Features.LedgerView.Checkpoints;

/// <summary>A checkpoint with its stamp, if it has one.</summary>
public sealed record CheckpointView(CheckpointRow Checkpoint, CheckpointStampRow? Stamp);

public sealed class CheckpointListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<(IReadOnlyList<CheckpointView> Rows, int Total)> ReadAsync(
        TableQuery query,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var page = db
            .Checkpoints.AsNoTracking()
            .OrderByDescending(c => c.TreeSize)
            .Skip(query.Skip)
            .Take(query.PageSize);
        var rows = await Joined(db, page).ToListAsync(cancellation);
        return (
            [.. rows.OrderByDescending(v => v.Checkpoint.TreeSize)],
            await db.Checkpoints.CountAsync(cancellation)
        );
    }

    public async Task<CheckpointView?> FindAsync(long treeSize, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var wanted = db.Checkpoints.AsNoTracking().Where(c => c.TreeSize == treeSize);
        return await Joined(db, wanted).SingleOrDefaultAsync(cancellation);
    }

    private static IQueryable<CheckpointView> Joined(
        WeldTraceDbContext db,
        IQueryable<CheckpointRow> checkpoints
    ) =>
        from checkpoint in checkpoints
        join stamp in db.CheckpointStamps on checkpoint.TreeSize equals stamp.TreeSize into stamps
        from stamp in stamps.DefaultIfEmpty()
        select new CheckpointView(checkpoint, stamp);
}
