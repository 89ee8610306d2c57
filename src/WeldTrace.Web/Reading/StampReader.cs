using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.LedgerStore;

namespace WeldTrace.Web.Reading;

/// <summary>What a document says about itself: the site, who prints it and when, and the ledger as it was signed last.</summary>
public sealed class StampReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteReader sites,
    TimeProvider clock
)
{
    public async Task<DocumentStamp> ReadAsync(Actor actor, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var site = await sites.GetAsync(cancellation);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var checkpoint = (await db.FindCheckpointAsync(cancellation))?.Read();
        return new DocumentStamp
        {
            SiteName = site.Name,
            PrintedBy = actor.PrintedName,
            PrintedAt = clock.GetUtcNow(),
            TimeZone = site.TimeZone,
            Units = site.Units,
            Ledger = checkpoint is null
                ? null
                : new SignedLedger(checkpoint.TreeSize, checkpoint.RootHex, checkpoint.At),
        };
    }
}
