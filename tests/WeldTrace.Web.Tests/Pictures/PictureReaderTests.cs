using SkiaSharp;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Pictures;

namespace WeldTrace.Web.Tests.Pictures;

public sealed class PictureReaderTests
{
    private const int Width = 1100;
    private const int Height = 700;

    [Theory]
    [InlineData("jpeg", "image/jpeg")]
    [InlineData("png", "image/png")]
    [InlineData("png interlaced", "image/png")]
    [InlineData("tiff", "image/tiff")]
    [InlineData("tiff tiles", "image/tiff")]
    [InlineData("tiff 16 bits", "image/tiff")]
    public void Picture_OfEachKind_IsRecognisedByItsContent_AndShownAsItIs(
        string kind,
        string mediaType
    )
    {
        var bytes = Make(kind);

        var brought = Accept.Value(PictureReader.Read(bytes, "whatever.bin"));

        Assert.Equal(
            (mediaType, Width, Height),
            (
                brought.Photograph.MediaType,
                brought.Photograph.WidthPixels,
                brought.Photograph.HeightPixels
            )
        );
        AssertShown(brought, (x, y) => SamplePictures.ColourAt(x, y, Width, Height));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void Jpeg_TurnedByTheCamera_IsShownAsTheLibraryTurnsIt(int orientation)
    {
        var bytes = WithExif(Make("jpeg"), Exif(orientation));

        var brought = Accept.Value(PictureReader.Read(bytes, "turned.jpg"));

        Assert.Equal(orientation, brought.Photograph.Orientation);
        Assert.Equal(
            ("Maker 1", "2026:03:02 10:00:00"),
            (brought.Photograph.Camera, brought.Photograph.TakenAt)
        );
        using var data = SKData.CreateCopy(bytes);
        using var codec = SKCodec.Create(data);
        Assert.Equal((SKEncodedOrigin)orientation, codec.EncodedOrigin);
        AssertShown(brought, (x, y) => Turned(codec.EncodedOrigin, x, y));
    }

    [Fact]
    public void Jpeg_WithBrokenExif_IsTakenIn_AndSaysSo()
    {
        var exif = Exif(6);
        exif[4] = 0xFF;
        exif[5] = 0xFF;

        var brought = Accept.Value(PictureReader.Read(WithExif(Make("jpeg"), exif), "broken.jpg"));

        Assert.True(brought.Photograph.IsCameraDataBroken);
        Assert.Null(brought.Photograph.Orientation);
    }

    [Theory]
    [InlineData("<html>", "no JPEG, PNG or TIFF")]
    [InlineData("GIF89a", "no JPEG, PNG or TIFF")]
    [InlineData("II*\0", "no JPEG, PNG or TIFF")]
    [InlineData("%PDF-1.7", "no JPEG, PNG or TIFF")]
    public void File_ThatIsNoPicture_IsRefused(string content, string told) =>
        Assert.Contains(
            told,
            Assert
                .Single(
                    PictureReader
                        .Read(System.Text.Encoding.Latin1.GetBytes(content), "macro.jpg")
                        .Refusals
                )
                .Sentence,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("jpeg")]
    [InlineData("png")]
    [InlineData("tiff")]
    [InlineData("tiff tiles")]
    public void Picture_CutOff_IsRefusedWithItsRow(string kind)
    {
        var bytes = Make(kind);
        // A TIFF has its head at the end; there the pixels are cut out instead.
        var damaged = kind.StartsWith("tiff", StringComparison.Ordinal)
            ?
            [
                .. bytes.Take(2000),
                .. new byte[bytes.Length / 2 - 2000],
                .. bytes.Skip(bytes.Length / 2),
            ]
            : bytes[..(bytes.Length / 2)];

        var brought = Accept.Value(PictureReader.Read(damaged, "half"));
        var damage = Assert.Throws<DamagedPictureException>(() => Build(brought));

        Assert.Contains("damaged or ends in mid-file", damage.Message, StringComparison.Ordinal);
    }

    /// <summary>Every byte of the head changed in turn: refused or shown, never anything else.</summary>
    [Theory]
    [InlineData("jpeg")]
    [InlineData("png")]
    [InlineData("tiff")]
    public void Picture_WithAnyByteOfItsHeadChanged_IsRefusedOrShown(string kind)
    {
        var bytes =
            kind == "tiff"
                ? SampleTiff.Make(64, 48, false, 8)
                : SamplePictures.Encoded(
                    64,
                    48,
                    kind == "png" ? SKEncodedImageFormat.Png : SKEncodedImageFormat.Jpeg
                );
        var places =
            kind == "tiff"
                ? Enumerable.Range(0, 8).Concat(Enumerable.Range(bytes.Length - 200, 200))
                : Enumerable.Range(0, Math.Min(400, bytes.Length));
        foreach (var at in places)
        {
            byte[] hostile = [.. bytes];
            hostile[at] ^= 0xFF;
            if (
                PictureReader.Read(hostile, "hostile") is { IsAccepted: true } read
                && (long)read.Value.Photograph.WidthPixels * read.Value.Photograph.HeightPixels
                    < 1_000_000
            )
            {
                try
                {
                    Build(read.Value);
                }
                catch (DamagedPictureException)
                {
                    // Told to whoever brought it.
                }
            }
        }
    }

    private static void AssertShown(BroughtPhotograph brought, Func<int, int, SKColor> expected)
    {
        var path = Build(brought);
        using var file = PyramidFile.TryOpen(path)!;
        Assert.Equal(brought.Photograph.ShownWidth, file.Layout.Width);
        using var whole = SKBitmap.Decode(file.Whole(5000));
        using var small = SKBitmap.Decode(file.Tile(file.Layout.Levels - 1, 0, 0)!);
        foreach (
            var (x, y) in new[] { (3, 5), (600, 20), (40, 640), (650, 600), (511, 511), (512, 512) }
        )
        {
            AssertNear(expected(x, y), whole.GetPixel(x, y));
            var halves = file.Layout.Levels - 1;
            AssertNear(expected(x, y), small.GetPixel(x >> halves, y >> halves));
        }

        File.Delete(path);
    }

    private static void AssertNear(SKColor expected, SKColor seen)
    {
        Assert.InRange(seen.Red - expected.Red, -6, 6);
        Assert.InRange(seen.Green - expected.Green, -6, 6);
    }

    private static string Build(BroughtPhotograph brought)
    {
        var path = Path.GetTempFileName();
        using var raster = PictureReader.Open(brought.Bytes, brought.Photograph.MediaType);
        PyramidBuilder.Build(raster, brought.Photograph.Orientation ?? 1, path);
        return path;
    }

    // Written out from the EXIF standard's own table of the place of row 0 and column 0.
    private static SKColor Turned(SKEncodedOrigin origin, int x, int y)
    {
        var (fileX, fileY) = origin switch
        {
            SKEncodedOrigin.TopRight => (Width - 1 - x, y),
            SKEncodedOrigin.BottomRight => (Width - 1 - x, Height - 1 - y),
            SKEncodedOrigin.BottomLeft => (x, Height - 1 - y),
            SKEncodedOrigin.LeftTop => (y, x),
            SKEncodedOrigin.RightTop => (y, Height - 1 - x),
            SKEncodedOrigin.RightBottom => (Width - 1 - y, Height - 1 - x),
            SKEncodedOrigin.LeftBottom => (Width - 1 - y, x),
            _ => (x, y),
        };
        return SamplePictures.ColourAt(fileX, fileY, Width, Height);
    }

    private static byte[] Make(string kind) =>
        kind switch
        {
            "jpeg" => SamplePictures.Encoded(Width, Height, SKEncodedImageFormat.Jpeg),
            "png" => SamplePictures.Encoded(Width, Height),
            "png interlaced" => InterlacedPng.Make(
                SamplePictures.Pixels(Width, Height),
                Width,
                Height
            ),
            "tiff" => SampleTiff.Make(Width, Height, false, 8),
            "tiff tiles" => SampleTiff.Make(Width, Height, true, 8),
            _ => SampleTiff.Make(Width, Height, false, 16),
        };

    private static byte[] WithExif(byte[] jpeg, byte[] exif)
    {
        byte[] content = [.. "Exif\0\0"u8, .. exif];
        var length = content.Length + 2;
        return
        [
            .. jpeg[..2],
            0xFF,
            0xE1,
            (byte)(length >> 8),
            (byte)length,
            .. content,
            .. jpeg[2..],
        ];
    }

    // Little-endian TIFF: maker, turn, date.
    private static byte[] Exif(int orientation)
    {
        List<byte> tiff = [.. "II*\0"u8, 8, 0, 0, 0, 3, 0];
        Entry(0x010F, 2, 8, 50);
        Entry(0x0112, 3, 1, orientation);
        Entry(0x0132, 2, 20, 58);
        tiff.AddRange([0, 0, 0, 0]);
        tiff.AddRange("Maker 1\0"u8);
        tiff.AddRange("2026:03:02 10:00:00\0"u8);
        return [.. tiff];

        void Entry(int tag, int type, int count, int value) =>
            tiff.AddRange([
                (byte)tag,
                (byte)(tag >> 8),
                (byte)type,
                0,
                (byte)count,
                0,
                0,
                0,
                (byte)value,
                0,
                0,
                0,
            ]);
    }
}
