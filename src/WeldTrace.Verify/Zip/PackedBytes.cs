namespace WeldTrace.Verify.Zip;

/// <summary>A part of the ZIP, as a stream that ends where the part ends.</summary>
internal sealed class PackedBytes(Stream zip, long offset, long length) : Stream
{
    private long _read;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => length;

    public override long Position
    {
        get => _read;
        set => throw new NotSupportedException();
    }

    public override int Read(Span<byte> buffer)
    {
        var wanted = (int)Math.Min(buffer.Length, length - _read);
        zip.Position = offset + _read;
        var read = zip.Read(buffer[..wanted]);
        _read += read;
        return read;
    }

    public override int Read(byte[] buffer, int offset, int count) =>
        Read(buffer.AsSpan(offset, count));

    public override void Flush() { }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) =>
        throw new NotSupportedException();
}
