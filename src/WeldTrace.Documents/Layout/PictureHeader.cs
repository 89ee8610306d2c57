using System.Buffers.Binary;

namespace WeldTrace.Documents.Layout;

/// <summary>Size of a JPEG or PNG picture, and how it must be turned to stand upright.</summary>
internal sealed record PictureHeader(int Width, int Height, int Orientation, bool IsPng)
{
    private static ReadOnlySpan<byte> PngSignature => [0x89, 0x50, 0x4E, 0x47, 13, 10, 26, 10];

    /// <summary>Whether the picture lies on its side and is turned by a quarter.</summary>
    public bool IsTurned => Orientation is >= 5 and <= 8;

    public int UprightWidth => IsTurned ? Height : Width;

    public int UprightHeight => IsTurned ? Width : Height;

    /// <summary>Reads the header; null when the bytes are no whole JPEG or PNG header.</summary>
    public static PictureHeader? TryRead(ReadOnlySpan<byte> data)
    {
        if (data.Length >= 24 && data[..8].SequenceEqual(PngSignature))
        {
            var width = BinaryPrimitives.ReadInt32BigEndian(data[16..]);
            var height = BinaryPrimitives.ReadInt32BigEndian(data[20..]);
            return Sized(width, height, 1, isPng: true);
        }

        return data.Length >= 4 && data[0] == 0xFF && data[1] == 0xD8 ? ReadJpeg(data) : null;
    }

    private static PictureHeader? ReadJpeg(ReadOnlySpan<byte> data)
    {
        var orientation = 1;
        for (var at = 2; at + 9 < data.Length && data[at] == 0xFF; )
        {
            var marker = data[at + 1];
            var length = UInt16(data, at + 2);
            if (IsFrame(marker))
            {
                return Sized(UInt16(data, at + 7), UInt16(data, at + 5), orientation);
            }

            if (marker == 0xE1 && at + 2 + length <= data.Length && length > 2)
            {
                orientation = ExifOrientation.Read(data.Slice(at + 4, length - 2)) ?? orientation;
            }

            at += 2 + length;
        }

        return null;
    }

    // Frames of all codings but the tables DHT (C4), JPG (C8) and DAC (CC) among them.
    private static bool IsFrame(byte marker) =>
        marker is >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC);

    private static PictureHeader? Sized(
        int width,
        int height,
        int orientation,
        bool isPng = false
    ) => width > 0 && height > 0 ? new PictureHeader(width, height, orientation, isPng) : null;

    private static int UInt16(ReadOnlySpan<byte> data, int at) =>
        BinaryPrimitives.ReadUInt16BigEndian(data[at..]);
}

/// <summary>The orientation tag (0x0112) of an EXIF segment.</summary>
internal static class ExifOrientation
{
    private const int TiffStart = 6;

    /// <summary>A number from 1 to 8, or null when the segment does not say.</summary>
    public static int? Read(ReadOnlySpan<byte> segment)
    {
        if (segment.Length < TiffStart + 8 || !segment.StartsWith("Exif\0\0"u8))
        {
            return null;
        }

        var tiff = segment[TiffStart..];
        var isLittle = tiff[0] == (byte)'I';
        var directory = (long)UInt32(tiff, 4, isLittle);
        if (directory + 2 > tiff.Length)
        {
            return null;
        }

        var entries = UInt16(tiff, (int)directory, isLittle);
        for (var i = 0; i < entries; i++)
        {
            var entry = directory + 2 + (12L * i);
            if (entry + 12 > tiff.Length)
            {
                return null;
            }

            if (UInt16(tiff, (int)entry, isLittle) == 0x0112)
            {
                var value = UInt16(tiff, (int)entry + 8, isLittle);
                return value is >= 1 and <= 8 ? value : null;
            }
        }

        return null;
    }

    private static int UInt16(ReadOnlySpan<byte> data, int at, bool isLittle) =>
        isLittle
            ? BinaryPrimitives.ReadUInt16LittleEndian(data[at..])
            : BinaryPrimitives.ReadUInt16BigEndian(data[at..]);

    private static uint UInt32(ReadOnlySpan<byte> data, int at, bool isLittle) =>
        isLittle
            ? BinaryPrimitives.ReadUInt32LittleEndian(data[at..])
            : BinaryPrimitives.ReadUInt32BigEndian(data[at..]);
}
