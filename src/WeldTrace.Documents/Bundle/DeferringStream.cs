namespace WeldTrace.Documents.Bundle;

/// <summary>
/// A web server's response takes no blocking writes, yet the framework's ZIP writer ends each entry
/// with a small one. Those bytes wait here until the next awaited write.
/// </summary>
internal sealed class DeferringStream(Stream target) : Stream
{
    private readonly MemoryStream _waiting = new();

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public async Task PassOnAsync(CancellationToken cancellation)
    {
        if (_waiting.Length > 0)
        {
            await target.WriteAsync(
                _waiting.GetBuffer().AsMemory(0, (int)_waiting.Length),
                cancellation
            );
            _waiting.SetLength(0);
        }
    }

    public override void Write(ReadOnlySpan<byte> buffer) => _waiting.Write(buffer);

    public override void Write(byte[] buffer, int offset, int count) =>
        Write(buffer.AsSpan(offset, count));

    public override async ValueTask WriteAsync(
        ReadOnlyMemory<byte> buffer,
        CancellationToken cancellationToken = default
    )
    {
        await PassOnAsync(cancellationToken);
        await target.WriteAsync(buffer, cancellationToken);
    }

    public override Task WriteAsync(
        byte[] buffer,
        int offset,
        int count,
        CancellationToken token
    ) => WriteAsync(buffer.AsMemory(offset, count), token).AsTask();

    public override void Flush() { }

    public override async Task FlushAsync(CancellationToken cancellationToken)
    {
        await PassOnAsync(cancellationToken);
        await target.FlushAsync(cancellationToken);
    }

    public override int Read(byte[] buffer, int offset, int count) =>
        throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _waiting.Dispose();
        }
        base.Dispose(disposing);
    }
}
