namespace WeldTrace.ProcessLogs.Tests;

/// <summary>Rows of a log without end; counts what was read of it.</summary>
internal sealed class EndlessStream(bool canSeek, long length) : Stream
{
    private byte[] _pending = System.Text.Encoding.UTF8.GetBytes(SmallLog.Header + "\n");
    private int _used;
    private long _row;

    public long BytesRead { get; private set; }

    public override bool CanRead => true;

    public override bool CanSeek => canSeek;

    public override bool CanWrite => false;

    public override long Length => length;

    public override long Position { get; set; }

    public override int Read(byte[] buffer, int offset, int count)
    {
        var room = buffer.AsSpan(offset, count);
        if (_used == _pending.Length)
        {
            var rows = Enumerable
                .Range(0, 1000)
                .Select(_ =>
                    System.FormattableString.Invariant($"{_row++ * 0.001:F3},8.125,200.0,-3.0010\n")
                );
            (_pending, _used) = (System.Text.Encoding.UTF8.GetBytes(string.Concat(rows)), 0);
        }

        var taken = Math.Min(room.Length, _pending.Length - _used);
        _pending.AsSpan(_used, taken).CopyTo(room);
        _used += taken;
        BytesRead += taken;
        return taken;
    }

    public override void Flush() { }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) =>
        throw new NotSupportedException();
}
