using System.IO.Compression;
using System.Text;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Documents.Bundle;

/// <summary>
/// Writes the history bundle of one vessel: a signed ZIP that is checked offline. The same input gives
/// the same bytes but for manifest.sig, since an ECDSA signature is never the same twice.
/// </summary>
public static class HistoryBundleWriter
{
    /// <exception cref="ArgumentException">The checkpoint is not signed by the key.</exception>
    /// <exception cref="InvalidDataException">An attachment is not what its hash says.</exception>
    public static async Task WriteAsync(
        HistoryBundleInput input,
        SiteKey key,
        Stream target,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(key);
        RequireSigned(input.Checkpoint, key);
        await using var stream = new DeferringStream(target);
        await using (
            var zip = await ZipArchive.CreateAsync(
                stream,
                ZipArchiveMode.Create,
                leaveOpen: true,
                entryNameEncoding: null,
                cancellation
            )
        )
        {
            await AddAllAsync(new BundleArchive(zip), input, key, cancellation);
        }
        await stream.FlushAsync(cancellation);
    }

    private static async Task AddAllAsync(
        BundleArchive archive,
        HistoryBundleInput input,
        SiteKey key,
        CancellationToken cancellation
    )
    {
        await AddDocumentsAsync(archive, input, key, cancellation);
        await AddRecordsAsync(archive, input, cancellation);
        await AddLedgerAsync(archive, input, cancellation);
        await AddLogsAsync(archive, input, cancellation);
        await AddAttachmentsAsync(archive, input, cancellation);

        var manifest = ManifestOf(input, archive.Files).ToCanonicalBytes();
        await archive.AddAsync(BundlePaths.Manifest, manifest, cancellation);
        await archive.AddAsync(BundlePaths.ManifestSignature, key.Sign(manifest), cancellation);
    }

    private static async Task AddDocumentsAsync(
        BundleArchive archive,
        HistoryBundleInput input,
        SiteKey key,
        CancellationToken cancellation
    )
    {
        var pem = Encoding.ASCII.GetBytes(key.PublicKey.Pem);
        var instructions = Encoding.UTF8.GetBytes(Instructions.For(input, key.Fingerprint));
        await archive.AddAsync(BundlePaths.Instructions, instructions, cancellation);
        await archive.AddAsync(BundlePaths.SiteKey, pem, cancellation);
        await archive.AddAsync(BundlePaths.Traveler, input.TravelerPdf, cancellation);
        if (input.BookPdf is { } book)
        {
            await archive.AddAsync(BundlePaths.Book, book, cancellation);
        }
    }

    private static async Task AddRecordsAsync(
        BundleArchive archive,
        HistoryBundleInput input,
        CancellationToken cancellation
    )
    {
        await archive.AddAsync(BundlePaths.Events, input.Events, cancellation);
        await archive.AddAsync(BundlePaths.Lineage, input.Lineage, cancellation);
        await archive.AddAsync(BundlePaths.Compliance, input.Compliance, cancellation);
        await archive.AddAsync(BundlePaths.ComplianceTable, input.ComplianceTable, cancellation);
        await archive.AddAsync(BundlePaths.RecordSchema, RecordSchema.Published(), cancellation);
        await archive.AddAsync(BundlePaths.BundleSchema, BundleSchema.Published(), cancellation);
        var records = input.Records.Select(record =>
            (Path: BundlePaths.Record(record.Kind, record.Id), record.Json)
        );
        foreach (var (path, json) in records.OrderBy(record => record.Path, StringComparer.Ordinal))
        {
            await archive.AddAsync(path, CanonicalJson.FromText(json), cancellation);
        }
    }

    private static async Task AddLedgerAsync(
        BundleArchive archive,
        HistoryBundleInput input,
        CancellationToken cancellation
    )
    {
        var (checkpoint, signature) = input.Checkpoint;
        var entries = input.Entries.OrderBy(entry => entry.Entry.Number).ToList();
        foreach (var (entry, _) in entries)
        {
            var path = BundlePaths.Entry(entry.Number);
            await archive.AddAsync(path, entry.ToCanonicalBytes(), cancellation);
        }
        var proofs = new InclusionProofs(
            checkpoint.TreeSize,
            [.. entries.Select(entry => new InclusionProof(entry.Entry.Number, entry.Path))]
        );
        await archive.AddAsync(BundlePaths.Proofs, proofs.ToCanonicalBytes(), cancellation);
        await archive.AddAsync(BundlePaths.Checkpoint, checkpoint.ToCanonicalBytes(), cancellation);
        await archive.AddAsync(BundlePaths.CheckpointSignature, signature, cancellation);
    }

    private static async Task AddLogsAsync(
        BundleArchive archive,
        HistoryBundleInput input,
        CancellationToken cancellation
    )
    {
        foreach (var log in input.Logs.OrderBy(log => log.RunId))
        {
            await archive.AddAsync(BundlePaths.Log(log.RunId), log.WriteCsv, cancellation);
        }
    }

    private static async Task AddAttachmentsAsync(
        BundleArchive archive,
        HistoryBundleInput input,
        CancellationToken cancellation
    )
    {
        var attachments = input
            .Attachments.DistinctBy(attachment => attachment.Sha256)
            .OrderBy(attachment => attachment.Sha256, StringComparer.Ordinal);
        foreach (var attachment in attachments)
        {
            var extension = AttachmentExtension.Of(attachment);
            var path = BundlePaths.Attachment(attachment.Sha256, extension);
            var file = await archive.AddAsync(path, attachment.Write, cancellation);
            if (file.Sha256 != attachment.Sha256)
            {
                throw new InvalidDataException($"The stored attachment {path} is damaged.");
            }
        }
    }

    private static BundleManifest ManifestOf(
        HistoryBundleInput input,
        IReadOnlyList<BundleFile> files
    ) =>
        new()
        {
            VesselSerial = input.VesselSerial,
            VesselId = input.VesselId,
            SiteName = input.SiteName,
            MadeAt = input.MadeAt,
            Files = files,
        };

    private static void RequireSigned(SignedCheckpoint signed, SiteKey key)
    {
        if (!key.Verify(signed.Checkpoint.ToCanonicalBytes(), signed.Signature))
        {
            throw new ArgumentException("The checkpoint is not signed by the site's key.");
        }
    }
}
