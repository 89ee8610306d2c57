using System.Buffers.Binary;

namespace WeldTrace.Web.Pictures;

/// <summary>The compressed pixels of a PNG, its IDAT chunks one after the other.</summary>
internal sealed class PngData(byte[] bytes) : Stream
{
    private const int FirstChunk = 8;
    private const int Overhead = 12;
    private int _next = FirstChunk;
    private int _at;
    private int _left;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <summary>Content of the first chunk of a name; null when there is none.</summary>
    public static byte[]? Find(ReadOnlySpan<byte> bytes, ReadOnlySpan<byte> name)
    {
        for (var at = FirstChunk; TryChunk(bytes, at, out var length); at += length + Overhead)
        {
            if (bytes.Slice(at + 4, 4).SequenceEqual(name))
            {
                return bytes.Slice(at + 8, length).ToArray();
            }
        }

        return null;
    }

    public override int Read(byte[] buffer, int offset, int count) =>
        Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        while (_left == 0)
        {
            if (!TryChunk(bytes, _next, out var length))
            {
                return 0;
            }

            if (bytes.AsSpan(_next + 4, 4).SequenceEqual("IDAT"u8))
            {
                (_at, _left) = (_next + 8, length);
            }

            _next += length + Overhead;
        }

        var taken = Math.Min(_left, buffer.Length);
        bytes.AsSpan(_at, taken).CopyTo(buffer);
        (_at, _left) = (_at + taken, _left - taken);
        return taken;
    }

    public override void Flush() { }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) =>
        throw new NotSupportedException();

    private static bool TryChunk(ReadOnlySpan<byte> bytes, int at, out int length)
    {
        length = 0;
        if (at < 0 || at > bytes.Length - Overhead)
        {
            return false;
        }

        var stated = BinaryPrimitives.ReadUInt32BigEndian(bytes[at..]);
        if (stated > bytes.Length - at - Overhead)
        {
            return false;
        }

        length = (int)stated;
        return true;
    }
}
