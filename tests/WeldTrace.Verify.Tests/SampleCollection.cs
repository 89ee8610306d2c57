using System.IO.Compression;
using WeldTrace.Documents.Bundle;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify.Tests;

/// <summary>The files of a collection of two histories, to be changed and packed again.</summary>
internal sealed class SampleCollection : SortedDictionary<string, byte[]>
{
    public const string First = "bundles/0001-NR-0142.zip";
    public const string Second = "bundles/0002-NR-0143.zip";
    public const string Title = "Production lot PL-26-03";

    private static readonly DateTimeOffset MadeAt = new(2026, 3, 3, 8, 0, 0, TimeSpan.Zero);

    private SampleCollection()
        : base(StringComparer.Ordinal) { }

    public static async Task<byte[]> WriteAsync()
    {
        using var zip = new MemoryStream();
        await using (var writer = await HistoryCollectionWriter.BeginAsync(zip, default))
        {
            foreach (var serial in (string[])["NR-0142", "NR-0143"])
            {
                var input = SampleBundle.Input() with { VesselSerial = serial };
                using var bundle = new MemoryStream(await SampleBundle.WriteAsync(input));
                await writer.AddAsync(serial, bundle, default);
            }
            await writer.FinishAsync(Title, SampleBundle.Site, MadeAt, SampleBundle.Key, default);
        }
        return zip.ToArray();
    }

    public static async Task<SampleCollection> OpenAsync()
    {
        var files = new SampleCollection();
        foreach (var (path, bytes) in BundleFiles.Unpack(await WriteAsync()))
        {
            files.Add(path, bytes);
        }
        return files;
    }

    public byte[] Pack(CompressionLevel compression = CompressionLevel.NoCompression)
    {
        using var zip = new MemoryStream();
        using (var archive = new ZipArchive(zip, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (path, bytes) in this)
            {
                using var stream = archive.CreateEntry(path, compression).Open();
                stream.Write(bytes);
            }
        }
        return zip.ToArray();
    }

    public CollectionReport Verify() => CollectionVerifier.Verify(new MemoryStream(Pack()));

    /// <summary>Makes the list fit the files as they are now, and signs it.</summary>
    public void RemakeList(SiteKey key, Func<CollectedBundle, CollectedBundle>? change = null)
    {
        var old = CollectionContents.FromCanonicalBytes(this[CollectionPaths.Contents]);
        var made = old with
        {
            Bundles = [.. old.Bundles.Select(b => Anew(change?.Invoke(b) ?? b))],
            Papers = [.. old.Papers.Select(Anew)],
        };
        this[CollectionPaths.Contents] = made.ToCanonicalBytes();
        this[CollectionPaths.ContentsSignature] = key.Sign(this[CollectionPaths.Contents]);
    }

    private CollectedBundle Anew(CollectedBundle bundle) =>
        bundle with
        {
            File = Anew(bundle.File),
        };

    private BundleFile Anew(BundleFile file) =>
        file with
        {
            Bytes = this[file.Path].Length,
            Sha256 = SampleBundle.Hash(this[file.Path]),
        };
}
