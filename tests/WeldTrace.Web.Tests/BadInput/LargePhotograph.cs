using System.Buffers.Binary;
using System.IO.Compression;
using System.IO.Hashing;

namespace WeldTrace.Web.Tests.BadInput;

/// <summary>A PNG of many white points that packs into a small file.</summary>
internal static class LargePhotograph
{
    /// <summary>First bytes of every PNG.</summary>
    public static readonly byte[] Signature = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>One bit per point, so that a row is short.</summary>
    public static byte[] Png(int width, int height)
    {
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        header[8] = 1;
        return
        [
            .. Signature,
            .. Chunk("IHDR"u8, header),
            .. Chunk("IDAT"u8, Rows(width, height)),
            .. Chunk("IEND"u8, []),
        ];
    }

    private static byte[] Rows(int width, int height)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            var row = new byte[1 + ((width + 7) / 8)];
            for (var y = 0; y < height; y++)
            {
                zlib.Write(row);
            }
        }

        return packed.ToArray();
    }

    /// <summary>A part of a PNG with its length and its check sum.</summary>
    public static byte[] Chunk(ReadOnlySpan<byte> kind, ReadOnlySpan<byte> content)
    {
        var chunk = new byte[content.Length + 12];
        BinaryPrimitives.WriteInt32BigEndian(chunk, content.Length);
        kind.CopyTo(chunk.AsSpan(4));
        content.CopyTo(chunk.AsSpan(8));
        BinaryPrimitives.WriteUInt32BigEndian(
            chunk.AsSpan(content.Length + 8),
            Crc32.HashToUInt32(chunk.AsSpan(4, content.Length + 4))
        );
        return chunk;
    }
}
