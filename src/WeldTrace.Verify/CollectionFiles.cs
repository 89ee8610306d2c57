using System.Security.Cryptography;
using WeldTrace.Domain.Ledger;
using WeldTrace.Verify.Zip;

namespace WeldTrace.Verify;

/// <summary>The files of a collection. Only its small documents are unpacked; bundles are read where they lie.</summary>
internal sealed class CollectionFiles
{
    private static readonly string[] Documents =
    [
        CollectionPaths.Contents,
        CollectionPaths.ContentsSignature,
        CollectionPaths.SiteKey,
        CollectionPaths.Instructions,
        CollectionPaths.Schema,
    ];

    private readonly Stream _zip;
    private readonly Dictionary<string, ZipItem> _items;
    private readonly Dictionary<string, byte[]> _documents = new(StringComparer.Ordinal);

    private CollectionFiles(Stream zip, IEnumerable<ZipItem> items, BundleLimits limits)
    {
        _zip = zip;
        _items = items.ToDictionary(i => i.Name, StringComparer.Ordinal);
        Limits = limits;
    }

    public BundleLimits Limits { get; }

    public IEnumerable<string> Paths => _items.Keys;

    /// <returns>Null when names alone could harm; the reasons are among the problems.</returns>
    /// <exception cref="RefusedBundleException">The ZIP is no good, or a limit is passed.</exception>
    public static CollectionFiles? Open(Stream zip, BundleLimits limits, ProblemList problems)
    {
        var directory = ZipEnd.Find(zip, limits);
        var items = ZipItems.Read(zip, directory);
        ZipNames.Check(items, problems);
        if (problems.All.Count > 0)
        {
            return null;
        }
        var placed = ZipLayout.Check(zip, items, directory).Where(i => !i.IsFolder).ToList();
        foreach (var item in placed.Where(i => !Documents.Contains(i.Name)))
        {
            RequireStored(item);
        }
        var files = new CollectionFiles(zip, placed, limits);
        files.Unpack(problems);
        return files;
    }

    public bool Has(string path) => _items.ContainsKey(path);

    public byte[]? Document(string path) => _documents.GetValueOrDefault(path);

    /// <summary>A bundle, as a file that can be searched.</summary>
    public Stream Bundle(string path) =>
        new BufferedStream(
            new PackedBytes(_zip, _items[path].DataOffset, _items[path].PackedLength),
            64 * 1024
        );

    /// <summary>Length and SHA-256 of a file; null when it could not be unpacked.</summary>
    public (long Bytes, string Sha256)? HashOf(string path)
    {
        if (Documents.Contains(path))
        {
            return Document(path) is { } bytes
                ? (bytes.Length, Convert.ToHexStringLower(SHA256.HashData(bytes)))
                : null;
        }
        using var bundle = Bundle(path);
        return (bundle.Length, Convert.ToHexStringLower(SHA256.HashData(bundle)));
    }

    private void Unpack(ProblemList problems)
    {
        var unpacker = new Unpacker(_zip, Limits);
        foreach (var item in Documents.Select(_items.GetValueOrDefault).OfType<ZipItem>())
        {
            try
            {
                _documents[item.Name] = unpacker.Unpack(item, keep: true).Document!;
            }
            catch (InvalidDataException error)
            {
                problems.Add(ProblemKind.Unreadable, item.Name, error.Message);
            }
        }
    }

    // Packed a second time, small bytes could become endless ones before the limits of a bundle are looked at.
    private static void RequireStored(ZipItem item)
    {
        if (item.Method != Unpacker.Stored || item.PackedLength != item.Length)
        {
            throw new RefusedBundleException(
                item.Name,
                "A collection holds its bundles as they are; this one is packed again."
            );
        }
    }
}
