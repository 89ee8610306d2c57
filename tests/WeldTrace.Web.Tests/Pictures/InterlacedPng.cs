using System.Buffers.Binary;
using System.IO.Compression;
using WeldTrace.Web.Tests.BadInput;

namespace WeldTrace.Web.Tests.Pictures;

/// <summary>A PNG in the seven passes of Adam7 (PNG specification, third edition, 8.2), which no library at hand writes.</summary>
internal static class InterlacedPng
{
    private static readonly (int X, int Y, int StepX, int StepY)[] _passes =
    [
        (0, 0, 8, 8),
        (4, 0, 8, 8),
        (0, 4, 4, 8),
        (2, 0, 4, 4),
        (0, 2, 2, 4),
        (1, 0, 2, 2),
        (0, 1, 1, 2),
    ];

    /// <param name="rgba">Four bytes per pixel, row by row.</param>
    /// <param name="width">Pixels of a row.</param>
    /// <param name="height">Rows.</param>
    public static byte[] Make(byte[] rgba, int width, int height)
    {
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        // Eight bits a channel, colour with opacity, interlaced.
        (header[8], header[9], header[12]) = (8, 6, 1);
        return
        [
            .. LargePhotograph.Signature,
            .. LargePhotograph.Chunk("IHDR"u8, header),
            .. LargePhotograph.Chunk("IDAT"u8, Packed(rgba, width, height)),
            .. LargePhotograph.Chunk("IEND"u8, []),
        ];
    }

    private static byte[] Packed(byte[] rgba, int width, int height)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            foreach (var pass in _passes)
            {
                for (var y = pass.Y; y < height; y += pass.StepY)
                {
                    zlib.WriteByte(0);
                    for (var x = pass.X; x < width; x += pass.StepX)
                    {
                        zlib.Write(rgba, ((y * width) + x) * 4, 4);
                    }
                }
            }
        }

        return packed.ToArray();
    }
}
