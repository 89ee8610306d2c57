using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.RunWriter;

internal static class Writing
{
    /// <summary>Saves the papers that the records name; an earlier start may have done so.</summary>
    public static async Task AddPapersAsync(IDbContextFactory<WeldTraceDbContext> contexts)
    {
        await using var db = await contexts.CreateDbContextAsync();
        if (!await db.Attachments.AnyAsync())
        {
            db.Add(SamplePapers.Certificate());
            await db.SaveChangesAsync();
        }
    }

    /// <summary>Saves new records with their ledger entries.</summary>
    public static async Task AddAsync(
        IDbContextFactory<WeldTraceDbContext> contexts,
        IEnumerable<object> records
    )
    {
        await using var db = await contexts.CreateDbContextAsync();
        db.AddRange(records);
        Accept.All(await db.SaveAsync(CancellationToken.None));
    }
}
