namespace WeldTrace.Web.Tests.Features.Welding.BringLog;

/// <summary>A file without an end, that may break off.</summary>
internal sealed class EndlessStream : Stream
{
    public long Given { get; private set; }

    public long? BreaksAfter { get; init; }

    /// <summary>How it breaks off.</summary>
    public IOException Break { get; init; } = new("The connection was lost.");

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
            throw Break;
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
