using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents.Bundle;
using WeldTrace.Documents.Exchange;
using WeldTrace.Domain.Compliance;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Archives;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Persistence.Loading;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.Features.Vessels.Book;
using WeldTrace.Web.Features.Vessels.Traveler;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Bundle;

/// <summary>Gathers everything that proves how a vessel was made, and writes it as one ZIP.</summary>
public sealed class BundleReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteReader sites,
    TravelerReader travelers,
    BookReader books,
    SiteKeyFolder keys,
    TimeProvider clock
) : IHistoryBundles
{
    /// <inheritdoc/>
    public async Task<bool> WriteAsync(
        string serial,
        Uri site,
        Actor actor,
        FileStream output,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(output);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .Database.CreateExecutionStrategy()
            .ExecuteAsync(
                token => WriteOnceAsync(db, serial, site, actor, output, token),
                cancellation
            );
    }

    private async Task<bool> WriteOnceAsync(
        WeldTraceDbContext db,
        string serial,
        Uri site,
        Actor actor,
        FileStream output,
        CancellationToken cancellation
    )
    {
        output.SetLength(0);

        // One snapshot, so that a record written meanwhile isn't half in the bundle.
        await using var snapshot = await db.Database.BeginSnapshotAsync(cancellation);
        var history = await db.FindVesselHistoryAsync(serial, cancellation);
        if (history is null)
        {
            return false;
        }

        var traveler = await travelers.PrintAsync(db, history, site, actor, cancellation);
        var key = keys.Current;
        var input = await GatherAsync(db, history, traveler, key, cancellation);
        input = input with
        {
            BookPdf = await books.PrintAsync(
                db,
                new(
                    history,
                    await db.LoadRecordsBehindAsync(history, cancellation),
                    [.. input.Entries.Select(e => e.Entry)]
                ),
                site,
                actor,
                cancellation
            ),
        };
        await HistoryBundleWriter.WriteAsync(input, key, output, cancellation);
        await KeepCheckpointAsync(input.Checkpoint, key, cancellation);
        return true;
    }

    private async Task<HistoryBundleInput> GatherAsync(
        WeldTraceDbContext db,
        VesselHistory history,
        byte[] traveler,
        SiteKey key,
        CancellationToken cancellation
    )
    {
        var (now, site) = (clock.GetUtcNow(), await sites.GetAsync(cancellation));
        var records = await db.LoadRecordsBehindAsync(history, cancellation);
        var ledger = await db.ReadLedgerAsync([.. records.Select(r => r.Id)], cancellation);
        var attachments = await AttachmentsAsync(db, records, cancellation);
        var logs = history.Runs.Where(r => r.Log is not null).ToList();
        var exchange = new ExchangeSource(
            history.Vessel.Id,
            records,
            [.. ledger.Entries.Select(e => e.Entry)],
            attachments
                .Select(a => a.Sha256)
                .Concat(logs.Select(r => r.Log!.CsvSha256))
                .ToHashSet(StringComparer.Ordinal),
            site.TimeZone,
            now
        );
        var matrix = ComplianceMatrix.Of(history.Vessel, history.Design.Content, records);
        return new HistoryBundleInput
        {
            Compliance = ComplianceJson.Write(history.Vessel.Id, history.Vessel.Serial, matrix),
            ComplianceTable = CsvText.Bytes(ComplianceTable.Heads, ComplianceTable.Rows(matrix)),
            Events = EpcisHistory.Write(exchange),
            Lineage = ProvLineage.Write(exchange),
            VesselSerial = history.Vessel.Serial,
            VesselId = history.Vessel.Id,
            SiteName = site.Name,
            MadeAt = now,
            TravelerPdf = traveler,
            Records =
            [
                .. records.Select(r => new BundledRecord(r.Kind, r.Id, RecordSnapshot.Of(r))),
            ],
            Entries = [.. ledger.Entries.Select(e => new BundledEntry(e.Entry, e.Path))],
            Checkpoint = key.Sign(
                new Checkpoint
                {
                    SiteName = site.Name,
                    TreeSize = ledger.Size,
                    RootHex = Convert.ToHexStringLower(ledger.Root),
                    At = now,
                }
            ),
            Logs =
            [
                .. logs.Select(r => new BundledLog(
                    r.Id,
                    (stream, token) => WriteLogAsync(db, r.Id, stream, token)
                )),
            ],
            Attachments = attachments,
        };
    }

    /// <summary>What left the house must be found here too: the check of the ledger holds it against the entries.</summary>
    private async Task KeepCheckpointAsync(
        SignedCheckpoint checkpoint,
        SiteKey key,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        await db.KeepCheckpointAsync(CheckpointRow.Of(checkpoint, key.PublicKey), cancellation);
    }

    /// <summary>Every photograph, certificate, chart and report that a record of the bundle names.</summary>
    private static async Task<IReadOnlyList<BundledAttachment>> AttachmentsAsync(
        WeldTraceDbContext db,
        IReadOnlyList<Record> records,
        CancellationToken cancellation
    )
    {
        var hashes = records
            .SelectMany(r => NamedHashes.In(RecordSnapshot.Of(r)).Attachments)
            .Distinct()
            .Order(StringComparer.Ordinal)
            .ToList();
        var types = await db
            .Attachments.Where(a => hashes.Contains(a.Sha256))
            .Select(a => new { a.Sha256, a.MediaType })
            .ToDictionaryAsync(a => a.Sha256, a => a.MediaType, cancellation);
        return [.. hashes.Where(types.ContainsKey).Select(h => Attach(db, h, types[h]))];
    }

    private static BundledAttachment Attach(
        WeldTraceDbContext db,
        string sha256,
        string mediaType
    ) =>
        new(
            sha256,
            sha256,
            mediaType,
            async (stream, token) =>
            {
                var attachment = await db.FindAttachmentAsync(sha256, token);
                await stream.WriteAsync(attachment!.Bytes, token);
            }
        );

    private static async Task WriteLogAsync(
        WeldTraceDbContext db,
        Guid runId,
        Stream stream,
        CancellationToken cancellation
    )
    {
        var log =
            await db.FindProcessLogAsync(runId, cancellation)
            ?? throw new InvalidOperationException($"The log of run {runId} is missing.");
        await ProcessLogExport.WriteCsvAsync(log, stream, cancellation);
    }
}
