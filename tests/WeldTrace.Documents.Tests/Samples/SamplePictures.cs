using System.Buffers.Binary;
using System.IO.Compression;

namespace WeldTrace.Documents.Tests.Samples;

/// <summary>Pictures drawn in memory, written as plain grey PNG files.</summary>
internal static class SamplePictures
{
    // A grey baseline JPEG of 24 by 12 pixels with a dark corner, drawn for this test.
    private const string SmallJpeg =
        "/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAA0JCgsKCA0LCgsODg0PEyAVExISEyccHhcgLikxMC4pLSwzOko+MzZGNy"
        + "wtQFdBRkxOUlNSMj5aYVpQYEpRUk//wAALCAAMABgBAREA/8QAFQABAQAAAAAAAAAAAAAAAAAAAAb/xAAnEAAAAgUN"
        + "AAAAAAAAAAAAAAAAAQIFERITAwQGBxQVFiIxUVWj0v/aAAgBAQAAPwCRwTSPju+T9Cwq/UiyU1vvKbQY0NzOik1jzd"
        + "DPchYgAD//2Q==";

    /// <summary>A small JPEG, with an EXIF orientation where one is given.</summary>
    public static byte[] Jpeg(byte? orientation = null)
    {
        var plain = Convert.FromBase64String(SmallJpeg);
        if (orientation is not { } value)
        {
            return plain;
        }

        byte[] tiff =
        [
            .. "MM\0*"u8,
            0,
            0,
            0,
            8,
            0,
            1,
            0x01,
            0x12,
            0,
            3,
            0,
            0,
            0,
            1,
            0,
            value,
            0,
            0,
            0,
            0,
            0,
            0,
        ];
        byte[] segment = [.. "Exif\0\0"u8, .. tiff];
        return
        [
            .. plain[..2],
            0xFF,
            0xE1,
            0,
            (byte)(segment.Length + 2),
            .. segment,
            .. plain[2..],
        ];
    }

    /// <summary>Two overlapping basins in a plate.</summary>
    public static byte[] Section(int width, int height) =>
        Png(
            width,
            height,
            (x, y) =>
            {
                var plate = y > height * 0.18 && y < height * 0.82;
                var basin = Basin(x, y, 0.4) || Basin(x, y, 0.6);
                return plate ? (byte)(basin ? 120 + (((x * 7) + (y * 3)) % 24) : 196) : (byte)60;
            }
        );

    private static bool Basin(int x, int y, double centre)
    {
        var half = 95 - (y * 0.28);
        return Math.Abs(x - (centre * 640)) < half;
    }

    public static byte[] Png(int width, int height, Func<int, int, byte> grey)
    {
        using var raw = new MemoryStream();
        for (var y = 0; y < height; y++)
        {
            raw.WriteByte(0);
            for (var x = 0; x < width; x++)
            {
                raw.WriteByte(grey(x, y));
            }
        }

        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            zlib.Write(raw.ToArray());
        }

        var head = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, width);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), height);
        head[8] = 8;
        using var file = new MemoryStream();
        file.Write([0x89, 0x50, 0x4E, 0x47, 13, 10, 26, 10]);
        Chunk(file, "IHDR"u8, head);
        Chunk(file, "IDAT"u8, packed.ToArray());
        Chunk(file, "IEND"u8, []);
        return file.ToArray();
    }

    private static void Chunk(MemoryStream file, ReadOnlySpan<byte> type, byte[] data)
    {
        var number = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, data.Length);
        file.Write(number);
        byte[] body = [.. type, .. data];
        file.Write(body);
        BinaryPrimitives.WriteUInt32BigEndian(number, Crc(body));
        file.Write(number);
    }

    private static uint Crc(byte[] data)
    {
        var crc = 0xFFFFFFFFu;
        foreach (var value in data)
        {
            crc ^= value;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc >> 1) ^ (0xEDB88320u & (0u - (crc & 1)));
            }
        }

        return ~crc;
    }
}
