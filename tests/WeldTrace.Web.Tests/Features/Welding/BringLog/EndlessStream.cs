namespace WeldTrace.Web.Tests.Features.Welding.BringLog;

/// <summary>A file without an end, that may break off.</summary>
internal sealed class EndlessStream : Stream
{
    public long Given { get; private set; }

    public long? BreaksAfter { get; init; }

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => Given;
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        if (Given >= BreaksAfter)
        {
            throw new IOException("The connection was lost.");
        }

        buffer.AsSpan(offset, count).Fill((byte)'1');
        Given += count;
        return count;
    }

    public override void Flush() { }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) =>
        throw new NotSupportedException();
}
