namespace WeldTrace.Verify.Zip;

/// <summary>A part of the ZIP, as a stream that ends where the part ends.</summary>
internal sealed class PackedBytes(Stream zip, long offset, long length) : Stream
{
    private long _read;

    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => false;

    public override long Length => length;

    public override long Position
    {
        get => _read;
        set => _read = value >= 0 ? value : throw new IOException("Before the start of the part.");
    }

    public override int Read(Span<byte> buffer)
    {
        var wanted = (int)Math.Clamp(length - _read, 0, buffer.Length);
        if (wanted == 0)
        {
            return 0;
        }
        zip.Position = offset + _read;
        var read = zip.Read(buffer[..wanted]);
        _read += read;
        return read;
    }

    public override int Read(byte[] buffer, int offset, int count) =>
        Read(buffer.AsSpan(offset, count));

    public override void Flush() { }

    public override long Seek(long offset, SeekOrigin origin) =>
        Position = origin switch
        {
            SeekOrigin.Current => _read + offset,
            SeekOrigin.End => length + offset,
            _ => offset,
        };

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) =>
        throw new NotSupportedException();
}
