namespace WeldTrace.Verify.Tests;

/// <summary>Like a web server's response: no seeking, and no blocking writes.</summary>
internal sealed class AsyncOnlyStream : Stream
{
    private readonly MemoryStream _bytes = new();

    public byte[] ToArray() => _bytes.ToArray();

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override ValueTask WriteAsync(
        ReadOnlyMemory<byte> buffer,
        CancellationToken cancellationToken = default
    ) => _bytes.WriteAsync(buffer, cancellationToken);

    public override Task WriteAsync(
        byte[] buffer,
        int offset,
        int count,
        CancellationToken token
    ) => _bytes.WriteAsync(buffer.AsMemory(offset, count), token).AsTask();

    public override Task FlushAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public override void Flush() => throw new InvalidOperationException("Blocking flush.");

    public override void Write(byte[] buffer, int offset, int count) =>
        throw new InvalidOperationException("Blocking write.");

    public override int Read(byte[] buffer, int offset, int count) =>
        throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}
