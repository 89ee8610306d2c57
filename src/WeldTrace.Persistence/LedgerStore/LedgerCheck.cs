using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>What a check of the whole ledger found.</summary>
/// <param name="Entries">Entries read.</param>
/// <param name="Records">Records compared with their newest entry.</param>
/// <param name="Problems">Everything that is not as it was written, each named; empty when all is well.</param>
public sealed record LedgerReport(long Entries, int Records, IReadOnlyList<string> Problems);

/// <summary>How far a check is.</summary>
/// <param name="Part">What is being read, for instance <c>entries</c>.</param>
/// <param name="Done">How many of them are read.</param>
/// <param name="Total">How many there are.</param>
public sealed record LedgerProgress(string Part, long Done, long Total);

/// <summary>Reads every entry and every record again and says what was changed, removed or added behind the program's back.</summary>
public static class LedgerCheck
{
    public static async Task<LedgerReport> CheckLedgerAsync(
        this WeldTraceDbContext db,
        CancellationToken cancellation,
        IProgress<LedgerProgress>? progress = null
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        // Work goes on meanwhile: everything is read as it stood at one moment.
        return await db
            .Database.CreateExecutionStrategy()
            .ExecuteAsync(
                async token =>
                {
                    await using var snapshot = await db.Database.BeginSnapshotAsync(token);
                    return await CheckAsync(db, progress, token);
                },
                cancellation
            );
    }

    private static async Task<LedgerReport> CheckAsync(
        WeldTraceDbContext db,
        IProgress<LedgerProgress>? progress,
        CancellationToken cancellation
    )
    {
        List<string> problems = [];
        var checkpoints = await CheckpointCheck.ReadAsync(db, cancellation);
        var entries = new EntryCheck(db, problems, checkpoints.Sizes);
        await entries.ReadAsync(progress, cancellation);
        problems.AddRange(checkpoints.FindProblems(entries.Tree.Size, entries.Roots));
        var records = await RecordComparison.CompareAsync(
            db,
            entries.Newest,
            problems,
            progress,
            cancellation
        );
        problems.AddRange(
            await FileCheck.FindProblemsAsync(db, entries.Newest.Values, progress, cancellation)
        );
        return new LedgerReport(entries.Tree.Size, records, problems);
    }
}
