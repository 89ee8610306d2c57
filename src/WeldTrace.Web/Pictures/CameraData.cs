using System.Buffers.Binary;
using System.Text;

namespace WeldTrace.Web.Pictures;

/// <summary>What a camera wrote into the file (EXIF).</summary>
/// <param name="Orientation">Turn, 1 to 8.</param>
/// <param name="TakenAt">When it was taken, in the camera's words.</param>
/// <param name="Camera">Maker and model.</param>
/// <param name="IsBroken">Whether it could not be read to its end.</param>
internal sealed record CameraData(int Orientation, string? TakenAt, string? Camera, bool IsBroken)
{
    private const int LongestText = 80;
    private const int MostEntries = 1000;

    /// <summary>A file in which no camera wrote anything.</summary>
    public static CameraData None { get; } = new(1, null, null, false);

    /// <summary>Reads the EXIF segment of a JPEG, the chunk of a PNG, or the tags of a TIFF. Nothing in it stops the picture.</summary>
    public static CameraData Read(ReadOnlySpan<byte> bytes, string mediaType)
    {
        var tiff = mediaType switch
        {
            "image/jpeg" => JpegSegments.Exif(bytes),
            "image/png" => PngData.Find(bytes, "eXIf"u8),
            _ => bytes,
        };
        if (tiff.IsEmpty)
        {
            return None;
        }

        try
        {
            return Read(tiff);
        }
        catch (Exception broken)
            when (broken
                    is ArgumentOutOfRangeException
                        or IndexOutOfRangeException
                        or OverflowException
            )
        {
            return None with { IsBroken = true };
        }
    }

    private static CameraData Read(ReadOnlySpan<byte> tiff)
    {
        var isLittle = tiff[0] == (byte)'I';
        if (!(tiff.StartsWith("II*\0"u8) || tiff.StartsWith("MM\0*"u8)))
        {
            // A BigTIFF has its tags elsewhere; its picture is read all the same.
            return None with
            {
                IsBroken = !tiff.StartsWith("II+\0"u8) && !tiff.StartsWith("MM\0+"u8),
            };
        }

        var first = Tags(tiff, UInt32(tiff, 4, isLittle), isLittle);
        var turn = first.TryGetValue(0x0112, out var at) ? UInt16(tiff, at + 8, isLittle) : 1;
        var inner = first.TryGetValue(0x8769, out var pointer)
            ? Tags(tiff, UInt32(tiff, pointer + 8, isLittle), isLittle)
            : [];
        var maker = Text(tiff, first, 0x010F, isLittle);
        var model = Text(tiff, first, 0x0110, isLittle);
        var camera = string.Join(' ', new[] { maker, model }.Where(t => t is not null));
        return new CameraData(
            turn is >= 1 and <= 8 ? turn : 1,
            Text(tiff, inner, 0x9003, isLittle) ?? Text(tiff, first, 0x0132, isLittle),
            camera.Length == 0 ? null : camera,
            turn is < 1 or > 8
        );
    }

    private static Dictionary<int, int> Tags(ReadOnlySpan<byte> tiff, uint start, bool isLittle)
    {
        Dictionary<int, int> tags = [];
        var at = checked((int)start);
        var count = Math.Min(UInt16(tiff, at, isLittle), MostEntries);
        for (var i = 0; i < count; i++)
        {
            var entry = at + 2 + (12 * i);
            tags.TryAdd(UInt16(tiff, entry, isLittle), entry);
        }

        return tags;
    }

    private static string? Text(
        ReadOnlySpan<byte> tiff,
        Dictionary<int, int> tags,
        int tag,
        bool isLittle
    )
    {
        if (!tags.TryGetValue(tag, out var entry) || UInt16(tiff, entry + 2, isLittle) != 2)
        {
            return null;
        }

        var length = checked((int)UInt32(tiff, entry + 4, isLittle));
        var at = length <= 4 ? entry + 8 : checked((int)UInt32(tiff, entry + 8, isLittle));
        var text = Encoding.Latin1.GetString(tiff.Slice(at, length)).TrimEnd('\0').Trim();
        var plain = new string([.. text.Where(c => !char.IsControl(c)).Take(LongestText)]);
        return plain.Length == 0 ? null : plain;
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
