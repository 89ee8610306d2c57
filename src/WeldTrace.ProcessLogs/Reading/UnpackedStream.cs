using System.IO.Compression;
using ZstdSharp;

namespace WeldTrace.ProcessLogs.Reading;

/// <summary>
/// Unpacks a packed log, counts what comes out, and stops after a limit: a small archive can hold a huge text. The packed
/// file is read to its end. A gzip file that was cut off is known by its last four bytes, the length of its text
/// (RFC 1952, 2.3.1); so a file of several archives in a row is not taken.
/// </summary>
internal sealed class UnpackedStream(
    Stream inner,
    LogPacking packing,
    MeasuredStream measured,
    long limitBytes
) : ReadOnlyStream
{
    private long _bytes;
    private bool _isEnded;

    public bool IsOverLimit => _bytes > limitBytes;

    public static UnpackedStream Open(
        LogPacking packing,
        Stream packed,
        MeasuredStream measured,
        long limitBytes
    ) =>
        new(
            packing == LogPacking.Gzip
                ? new GZipStream(packed, CompressionMode.Decompress)
                : new DecompressionStream(packed),
            packing,
            measured,
            limitBytes
        );

    public override int Read(Span<byte> buffer) => throw new NotSupportedException();

    public override async ValueTask<int> ReadAsync(
        Memory<byte> buffer,
        CancellationToken cancellationToken = default
    )
    {
        try
        {
            var read = IsOverLimit ? 0 : await inner.ReadAsync(buffer, cancellationToken);
            _bytes += read;
            if (read == 0 && !buffer.IsEmpty && !_isEnded && !IsOverLimit)
            {
                await EndAsync(cancellationToken);
            }

            return IsOverLimit ? 0 : read;
        }
        catch (Exception damage)
            when (damage is InvalidDataException or ZstdException or EndOfStreamException)
        {
            throw new DamagedArchiveException("The packed log is damaged.", damage);
        }
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
        }

        base.Dispose(disposing);
    }

    private async Task EndAsync(CancellationToken cancellation)
    {
        _isEnded = true;
        var rest = new byte[4096];
        while (await measured.ReadAsync(rest, cancellation) > 0) { }

        if (packing == LogPacking.Gzip && measured.Tail != unchecked((uint)_bytes))
        {
            throw new InvalidDataException("The archive ends before its end.");
        }
    }
}

/// <summary>A packed log that cannot be unpacked to its end.</summary>
internal sealed class DamagedArchiveException(string message, Exception inner)
    : Exception(message, inner);
