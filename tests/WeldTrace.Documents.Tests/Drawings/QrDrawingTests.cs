using QRCoder;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;
using WeldTrace.Documents.Tests.Samples;
using Xunit;

namespace WeldTrace.Documents.Tests.Drawings;

public sealed class QrDrawingTests
{
    [Fact]
    public void Draw_RecordAddress_PrintsTheModulesOfTheCode()
    {
        var model = SampleTraveler.Model();
        using var generator = new QRCodeGenerator();
        using var code = generator.CreateQrCode(model.RecordAddress, QRCodeGenerator.ECCLevel.M);
        using var pdf = PdfDocument.Open(WrittenPdf.Bytes(model));

        var dark = DarkRectangles(pdf.GetPage(1));

        var modules = code.ModuleMatrix.Count;
        var left = dark.Min(box => box.Left);
        var top = dark.Max(box => box.Top);
        const int QuietZone = 4;
        var size = (dark.Max(box => box.Right) - left) / (modules - (2 * QuietZone));
        for (var row = QuietZone; row < modules - QuietZone; row++)
        {
            for (var column = QuietZone; column < modules - QuietZone; column++)
            {
                var x = left + ((column - QuietZone + 0.5) * size);
                var y = top - ((row - QuietZone + 0.5) * size);
                var isDark = dark.Any(box =>
                    box.Left < x && x < box.Right && box.Bottom < y && y < box.Top
                );
                Assert.Equal(code.ModuleMatrix[row][column], isDark);
            }
        }
    }

    // The code is the one filled path with very many parts.
    private static PdfRectangle[] DarkRectangles(Page page)
    {
        var path = Assert.Single(page.Paths, path => path.IsFilled && path.Count > 100);
        return [.. path.Select(part => part.GetBoundingRectangle()).OfType<PdfRectangle>()];
    }
}
