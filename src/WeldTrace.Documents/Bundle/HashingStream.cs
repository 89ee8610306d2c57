using System.Security.Cryptography;

namespace WeldTrace.Documents.Bundle;

/// <summary>Passes bytes on, counts them and hashes them.</summary>
internal sealed class HashingStream(Stream target) : Stream
{
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private long _bytes;

    public string Sha256() => Convert.ToHexStringLower(_hash.GetCurrentHash());

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => _bytes;

    public override long Position
    {
        get => _bytes;
        set => throw new NotSupportedException();
    }

    public override async ValueTask WriteAsync(
        ReadOnlyMemory<byte> buffer,
        CancellationToken cancellationToken = default
    )
    {
        Count(buffer.Span);
        await target.WriteAsync(buffer, cancellationToken);
    }

    public override Task WriteAsync(
        byte[] buffer,
        int offset,
        int count,
        CancellationToken token
    ) => WriteAsync(buffer.AsMemory(offset, count), token).AsTask();

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        Count(buffer);
        target.Write(buffer);
    }

    public override void Write(byte[] buffer, int offset, int count) =>
        Write(buffer.AsSpan(offset, count));

    public override void Flush() => target.Flush();

    public override Task FlushAsync(CancellationToken cancellationToken) =>
        target.FlushAsync(cancellationToken);

    public override int Read(byte[] buffer, int offset, int count) =>
        throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _hash.Dispose();
        }
        base.Dispose(disposing);
    }

    private void Count(ReadOnlySpan<byte> buffer)
    {
        _hash.AppendData(buffer);
        _bytes += buffer.Length;
    }
}
