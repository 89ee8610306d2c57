using System.Runtime.InteropServices;
using Microsoft.Extensions.Configuration;
using SkiaSharp;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Pictures;

namespace WeldTrace.Web.Tests.Pictures;

/// <summary>Pictures whose pixels are known, and a store of their levels in a folder of its own.</summary>
internal static class SamplePictures
{
    /// <summary>Each pixel of this picture has a colour of its own place.</summary>
    public static SKBitmap Drawn(int width, int height)
    {
        var bitmap = new SKBitmap(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        Marshal.Copy(Pixels(width, height), 0, bitmap.GetPixels(), width * height * 4);
        return bitmap;
    }

    /// <summary>The same picture as bytes of red, green, blue and opacity, row by row.</summary>
    public static byte[] Pixels(int width, int height)
    {
        var pixels = new byte[width * height * 4];
        for (var at = 0; at < pixels.Length; at += 4)
        {
            var colour = ColourAt(at / 4 % width, at / 4 / width, width, height);
            (pixels[at], pixels[at + 1], pixels[at + 2]) = (colour.Red, colour.Green, colour.Blue);
            pixels[at + 3] = 255;
        }

        return pixels;
    }

    public static SKColor ColourAt(int x, int y, int width, int height) =>
        new((byte)(x * 255 / width), (byte)(y * 255 / height), 128);

    public static byte[] Encoded(
        int width,
        int height,
        SKEncodedImageFormat format = SKEncodedImageFormat.Png
    )
    {
        using var bitmap = Drawn(width, height);
        using var data = bitmap.Encode(format, 95);
        return data.ToArray();
    }

    public static PictureStore Store(SiteDatabase database) =>
        new(
            new ConfigurationBuilder()
                .AddInMemoryCollection([
                    KeyValuePair.Create<string, string?>(
                        "Database:Folder",
                        Directory.CreateTempSubdirectory("pictures").FullName
                    ),
                ])
                .Build(),
            database,
            TimeProvider.System
        );
}
