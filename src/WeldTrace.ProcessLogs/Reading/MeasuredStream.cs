using System.Security.Cryptography;

namespace WeldTrace.ProcessLogs.Reading;

/// <summary>Passes bytes on, counts and hashes them, and stops after a limit.</summary>
internal sealed class MeasuredStream(Stream inner, long limitBytes) : ReadOnlyStream
{
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);

    public long BytesRead { get; private set; }

    /// <summary>The last four bytes read, as a number, the lowest first.</summary>
    public uint Tail { get; private set; }

    public bool IsOverLimit => BytesRead > limitBytes;

    public string Sha256() => Convert.ToHexStringLower(_hash.GetCurrentHash());

    public override int Read(Span<byte> buffer) =>
        Measure(buffer, IsOverLimit ? 0 : inner.Read(buffer));

    public override async ValueTask<int> ReadAsync(
        Memory<byte> buffer,
        CancellationToken cancellationToken = default
    )
    {
        var read = IsOverLimit ? 0 : await inner.ReadAsync(buffer, cancellationToken);
        return Measure(buffer.Span, read);
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _hash.Dispose();
        }

        base.Dispose(disposing);
    }

    private int Measure(ReadOnlySpan<byte> buffer, int read)
    {
        _hash.AppendData(buffer[..read]);
        BytesRead += read;
        foreach (var last in buffer[Math.Max(0, read - sizeof(uint))..read])
        {
            Tail = (Tail >> 8) | ((uint)last << 24);
        }

        return IsOverLimit ? 0 : read;
    }
}
