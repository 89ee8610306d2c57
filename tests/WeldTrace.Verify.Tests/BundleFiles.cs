using System.IO.Compression;
using System.Security.Cryptography;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify.Tests;

/// <summary>The files of a bundle, unpacked, to be changed and packed again.</summary>
internal sealed class BundleFiles : SortedDictionary<string, byte[]>
{
    private BundleFiles()
        : base(StringComparer.Ordinal) { }

    public static async Task<BundleFiles> SampleAsync() =>
        Unpack(await SampleBundle.WriteAsync(SampleBundle.Input()));

    public static BundleFiles Unpack(byte[] zip)
    {
        var files = new BundleFiles();
        using var archive = new ZipArchive(new MemoryStream(zip), ZipArchiveMode.Read);
        foreach (var entry in archive.Entries)
        {
            using var stream = entry.Open();
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            files.Add(entry.FullName, bytes.ToArray());
        }
        return files;
    }

    public byte[] Pack()
    {
        using var zip = new MemoryStream();
        using (var archive = new ZipArchive(zip, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (path, bytes) in this)
            {
                using var stream = archive.CreateEntry(path).Open();
                stream.Write(bytes);
            }
        }
        return zip.ToArray();
    }

    public BundleReport Verify() => BundleVerifier.Verify(new MemoryStream(Pack()));

    /// <summary>Makes a manifest that fits the files as they are now, without signing it.</summary>
    public void RemakeManifest()
    {
        var old = BundleManifest.FromCanonicalBytes(this[BundlePaths.Manifest]);
        string[] own = [BundlePaths.Manifest, BundlePaths.ManifestSignature];
        var made = old with
        {
            Files =
            [
                .. this.Where(file => !own.Contains(file.Key))
                    .Select(file => new BundleFile
                    {
                        Path = file.Key,
                        Bytes = file.Value.Length,
                        Sha256 = Convert.ToHexStringLower(SHA256.HashData(file.Value)),
                    }),
            ],
        };
        this[BundlePaths.Manifest] = made.ToCanonicalBytes();
    }

    public void Sign(SiteKey key) =>
        this[BundlePaths.ManifestSignature] = key.Sign(this[BundlePaths.Manifest]);
}
