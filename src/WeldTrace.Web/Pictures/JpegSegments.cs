using System.Buffers.Binary;

namespace WeldTrace.Web.Pictures;

/// <summary>The segments before the pixels of a JPEG.</summary>
internal static class JpegSegments
{
    /// <summary>The TIFF block inside the EXIF segment; empty when there is none.</summary>
    public static ReadOnlySpan<byte> Exif(ReadOnlySpan<byte> jpeg)
    {
        ReadOnlySpan<byte> head = "Exif\0\0"u8;
        for (var at = 2; at + 4 <= jpeg.Length && jpeg[at] == 0xFF; )
        {
            var (marker, length) = (
                jpeg[at + 1],
                BinaryPrimitives.ReadUInt16BigEndian(jpeg[(at + 2)..])
            );
            if (marker is 0xDA or 0xD9 || at + 2 + length > jpeg.Length || length < 2)
            {
                return [];
            }

            var content = jpeg.Slice(at + 4, length - 2);
            if (marker == 0xE1 && content.StartsWith(head))
            {
                // A segment that ends with its name is broken; one byte tells the reader so.
                return content.Length > head.Length ? content[head.Length..] : content[..1];
            }

            at += 2 + length;
        }

        return [];
    }
}
