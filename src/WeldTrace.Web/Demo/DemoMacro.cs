using System.Security.Cryptography;
using SkiaSharp;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Engineering.Sections;
using WeldTrace.Persistence.Attachments;

namespace WeldTrace.Web.Demo;

/// <summary>A drawn stand-in for the macro photograph of a section; it says on its face that it is drawn.</summary>
internal static class DemoMacro
{
    private const int Width = 900;
    private const int Height = 420;
    private const int BarLeft = 70;
    private const int BarTop = 370;
    private const int BarPixels = 250;

    /// <summary>The scale bar of 5 mm and the weld face, as they are drawn.</summary>
    public static PictureSetUp SetUp { get; } =
        new(
            new(BarLeft, BarTop + 3),
            new(BarLeft + BarPixels, BarTop + 3),
            new Measured("5.00", "mm"),
            new Measured("0.005", "mm"),
            null,
            null,
            new Measured("0.5", "px"),
            new FaceLine(new(260, 60), new(640, 60))
        );

    /// <summary>The hook on the advancing side, as it is drawn.</summary>
    public static MarkEntry Hook { get; } =
        new(
            PictureShape.Line,
            [new(384, 240), new(384, 224)],
            Imperfection.Hook,
            null,
            new Measured("0.60", "mm"),
            "Design specification DS-10, section 6",
            ""
        );

    /// <summary>The width of the stirred metal at half its depth, as it is drawn.</summary>
    public static MarkEntry Nugget { get; } =
        new(
            PictureShape.Line,
            [new(350, 200), new(554, 200)],
            Imperfection.None,
            SectionDimension.NuggetWidth,
            null,
            null,
            ""
        );

    public static (Photograph Photograph, Attachment Attachment) Make(string serial)
    {
        using var bitmap = new SKBitmap(Width, Height);
        using (var canvas = new SKCanvas(bitmap))
        {
            Draw(canvas, serial);
        }

        using var data = bitmap.Encode(SKEncodedImageFormat.Jpeg, 88);
        var bytes = data.ToArray();
        var hash = Convert.ToHexStringLower(SHA256.HashData(bytes));
        return (
            new Photograph(hash, $"{serial}-section.jpg", "image/jpeg", Width, Height),
            new Attachment
            {
                Sha256 = hash,
                MediaType = "image/jpeg",
                Length = bytes.Length,
                Bytes = bytes,
            }
        );
    }

    private static void Draw(SKCanvas canvas, string serial)
    {
        using var metal = new SKPaint { Color = new SKColor(0xC9, 0xC6, 0xBE) };
        using var stirred = new SKPaint
        {
            Color = new SKColor(0xA8, 0xA4, 0x9A),
            IsAntialias = true,
        };
        using var line = new SKPaint
        {
            Color = new SKColor(0x55, 0x52, 0x4B),
            IsAntialias = true,
            StrokeWidth = 2,
            Style = SKPaintStyle.Stroke,
        };
        using var ink = new SKPaint { Color = SKColors.White, IsAntialias = true };
        using var font = new SKFont(SKTypeface.Default, 18);
        canvas.Clear(new SKColor(0x20, 0x20, 0x20));
        canvas.DrawRect(40, 60, Width - 80, 300, metal);
        using var nugget = new SKPathBuilder();
        nugget.MoveTo(260, 60);
        nugget.LineTo(640, 60);
        nugget.CubicTo(560, 150, 540, 320, 450, 322);
        nugget.CubicTo(360, 320, 340, 150, 260, 60);
        nugget.Close();
        using var shape = nugget.Detach();
        canvas.DrawPath(shape, stirred);
        for (var ring = 0; ring < 5; ring++)
        {
            canvas.DrawOval(450, 210, 30 + (ring * 14), 36 + (ring * 15), line);
        }

        canvas.DrawLine(40, 240, 372, 240, line);
        canvas.DrawLine(372, 240, 384, 224, line);
        canvas.DrawLine(526, 240, Width - 40, 240, line);
        canvas.DrawRect(BarLeft, BarTop, BarPixels, 6, ink);
        canvas.DrawText("5 mm", BarLeft, BarTop - 8 + 36, SKTextAlign.Left, font, ink);
        canvas.DrawText(
            $"{serial}: drawn for the demonstration, no photograph",
            360,
            392,
            SKTextAlign.Left,
            font,
            ink
        );
    }
}
