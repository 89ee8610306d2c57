using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents.Bundle;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Trace.Histories;

/// <summary>An order can't be made; the message says why in a sentence.</summary>
internal sealed class OrderFaultException(string message) : Exception(message);

/// <summary>Makes the file of an order: the bundle of each vessel as it is downloaded by itself, and the signed list of them.</summary>
public sealed class CollectionDesk(
    IHistoryBundles bundles,
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteReader sites,
    SiteKeyFolder keys,
    OrderFiles files,
    TimeProvider clock
)
{
    private const string Whole = "histories.zip";
    private const string One = "vessel.zip";

    /// <summary>Writes the file under its name.</summary>
    /// <param name="order">What is made.</param>
    /// <param name="report">Hears how many vessels are done.</param>
    /// <param name="cancellation">Leaves drafts behind.</param>
    /// <returns>Length and SHA-256 of the file.</returns>
    /// <exception cref="OrderFaultException">It can't be made.</exception>
    internal async Task<(long Bytes, string Sha256)> MakeAsync(
        HistoryOrder order,
        Action<int> report,
        CancellationToken cancellation
    )
    {
        var actor = await ActorAsync(order, cancellation);
        var site = await sites.GetAsync(cancellation);
        var key = keys.Current;
        await using var whole = files.Draft(order, Whole);
        await using (var writer = await HistoryCollectionWriter.BeginAsync(whole, cancellation))
        {
            foreach (var (i, serial) in order.Serials.Index())
            {
                await AddAsync(writer, order, serial, actor, cancellation);
                report(i + 1);
            }

            if (keys.Current.Fingerprint != key.Fingerprint)
            {
                throw new OrderFaultException(
                    "The key of the site was changed while the histories were being made. Order them again."
                );
            }

            await writer.FinishAsync(order.Title, site.Name, clock.GetUtcNow(), key, cancellation);
        }

        await whole.FlushAsync(cancellation);
        whole.Position = 0;
        var sha256 = Convert.ToHexStringLower(await SHA256.HashDataAsync(whole, cancellation));
        var bytes = whole.Length;
        files.Finish(order, whole);
        return (bytes, sha256);
    }

    private async Task AddAsync(
        HistoryCollectionWriter writer,
        HistoryOrder order,
        string serial,
        Actor actor,
        CancellationToken cancellation
    )
    {
        RequireRoom(0);
        await using var one = files.Draft(order, One);
        if (!await bundles.WriteAsync(serial, order.Site, actor, one, cancellation))
        {
            throw new OrderFaultException($"There is no vessel {serial} on record any more.");
        }

        await one.FlushAsync(cancellation);
        RequireRoom(one.Length);
        one.Position = 0;
        await writer.AddAsync(serial, one, cancellation);
    }

    // Asked before the disk is full: the database writes to the same one, and must go on.
    private void RequireRoom(long bytes)
    {
        if (!files.HasRoomFor(bytes))
        {
            throw new OrderFaultException(OrderRules.NoRoom.Sentence);
        }
    }

    private async Task<Actor> ActorAsync(HistoryOrder order, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var person = await db
            .People.AsNoTracking()
            .SingleOrDefaultAsync(p => p.Id == order.OrderedById && p.IsActive, cancellation);
        return person?.AsActor()
            ?? throw new OrderFaultException(
                $"{order.OrderedBy}, who ordered this, has no active account any more."
            );
    }
}
