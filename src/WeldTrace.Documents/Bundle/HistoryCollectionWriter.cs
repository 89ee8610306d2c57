using System.IO.Compression;
using System.Text;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Documents.Bundle;

/// <summary>
/// Writes the history bundles of several vessels into one ZIP, with a signed list of them. Each bundle is put in as it
/// is, not packed a second time, so that it can be verified where it lies.
/// </summary>
public sealed class HistoryCollectionWriter : IAsyncDisposable
{
    private readonly ZipArchive _zip;
    private readonly BundleArchive _archive;
    private readonly List<CollectedBundle> _bundles = [];

    private HistoryCollectionWriter(ZipArchive zip)
    {
        _zip = zip;
        _archive = new BundleArchive(zip, CompressionLevel.NoCompression);
    }

    /// <summary>Begins a collection.</summary>
    /// <param name="target">An empty file, which stays open.</param>
    /// <param name="cancellation">Ends the writing.</param>
    public static async Task<HistoryCollectionWriter> BeginAsync(
        Stream target,
        CancellationToken cancellation
    ) =>
        new(
            await ZipArchive.CreateAsync(
                target,
                ZipArchiveMode.Create,
                leaveOpen: true,
                entryNameEncoding: null,
                cancellation
            )
        );

    /// <summary>Puts in the bundle of a vessel.</summary>
    /// <param name="serial">Serial number of the vessel.</param>
    /// <param name="bundle">The bundle, read from where it stands.</param>
    /// <param name="cancellation">Ends the writing.</param>
    public async Task AddAsync(string serial, Stream bundle, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(bundle);
        var file = await _archive.AddAsync(
            CollectionPaths.Bundle(_bundles.Count + 1, serial),
            (stream, token) => bundle.CopyToAsync(stream, token),
            cancellation
        );
        _bundles.Add(new CollectedBundle { VesselSerial = serial, File = file });
    }

    /// <summary>Writes the list and how to check it. Without it the file is no collection.</summary>
    /// <param name="title">What the vessels have in common.</param>
    /// <param name="siteName">Name of the site.</param>
    /// <param name="madeAt">Now.</param>
    /// <param name="key">The key that signed every bundle.</param>
    /// <param name="cancellation">Ends the writing.</param>
    public async Task FinishAsync(
        string title,
        string siteName,
        DateTimeOffset madeAt,
        SiteKey key,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(key);
        var contents = new CollectionContents
        {
            Title = title,
            SiteName = siteName,
            MadeAt = madeAt,
            Bundles = _bundles,
            Papers = [],
        };
        var text = Encoding.UTF8.GetBytes(CollectionInstructions.For(contents, key.Fingerprint));
        var pem = Encoding.ASCII.GetBytes(key.PublicKey.Pem);
        contents = contents with
        {
            Papers =
            [
                await PutAsync(CollectionPaths.Instructions, text, cancellation),
                await PutAsync(CollectionPaths.SiteKey, pem, cancellation),
                await PutAsync(CollectionPaths.Schema, BundleSchema.Published(), cancellation),
            ],
        };
        var bytes = contents.ToCanonicalBytes();
        await _archive.AddAsync(CollectionPaths.Contents, bytes, cancellation);
        await _archive.AddAsync(CollectionPaths.ContentsSignature, key.Sign(bytes), cancellation);
    }

    public ValueTask DisposeAsync() => _zip.DisposeAsync();

    private Task<BundleFile> PutAsync(string path, byte[] bytes, CancellationToken cancellation) =>
        _archive.AddAsync(
            path,
            (stream, token) => stream.WriteAsync(bytes, token).AsTask(),
            cancellation
        );
}
