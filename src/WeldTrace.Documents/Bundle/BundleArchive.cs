using System.IO.Compression;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Documents.Bundle;

/// <summary>A ZIP being written: nothing in it depends on the clock or the machine.</summary>
internal sealed class BundleArchive(
    ZipArchive zip,
    CompressionLevel compression = CompressionLevel.Optimal
)
{
    // The earliest time that a ZIP can name; the true times stand in the records.
    private static readonly DateTimeOffset EntryTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);
    private const int OrdinaryFileReadableByAll = 0x81A4 << 16;
    private readonly List<BundleFile> _files = [];

    public IReadOnlyList<BundleFile> Files => _files;

    public Task AddAsync(string path, ReadOnlyMemory<byte> bytes, CancellationToken cancellation) =>
        AddAsync(path, (stream, token) => stream.WriteAsync(bytes, token).AsTask(), cancellation);

    public async Task<BundleFile> AddAsync(
        string path,
        Func<Stream, CancellationToken, Task> write,
        CancellationToken cancellation
    )
    {
        var entry = zip.CreateEntry(path, compression);
        entry.LastWriteTime = EntryTime;
        entry.ExternalAttributes = OrdinaryFileReadableByAll;
        await using var stream = await entry.OpenAsync(cancellation);
        await using var hashing = new HashingStream(stream);
        await write(hashing, cancellation);
        var file = new BundleFile
        {
            Path = path,
            Bytes = hashing.Length,
            Sha256 = hashing.Sha256(),
        };
        _files.Add(file);
        return file;
    }
}
