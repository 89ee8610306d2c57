using UglyToad.PdfPig;
using UglyToad.PdfPig.DocumentLayoutAnalysis.TextExtractor;
using WeldTrace.Documents.Traveler;

namespace WeldTrace.Documents.Tests.Samples;

/// <summary>A document written and opened again.</summary>
internal static class WrittenPdf
{
    public static byte[] Bytes(TravelerModel model)
    {
        using var stream = new MemoryStream();
        TravelerExporter.Write(model, stream);
        return stream.ToArray();
    }

    /// <summary>The text of each page in the order in which it was written.</summary>
    public static string[] Pages(byte[] bytes)
    {
        using var pdf = PdfDocument.Open(bytes);
        return [.. pdf.GetPages().Select(page => ContentOrderTextExtractor.GetText(page))];
    }

    public static string Text(TravelerModel model) => string.Join('\n', Pages(Bytes(model)));
}
