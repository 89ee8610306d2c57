using UglyToad.PdfPig;
using UglyToad.PdfPig.DocumentLayoutAnalysis.TextExtractor;
using WeldTrace.Documents.Labels;
using WeldTrace.Documents.Procedures;
using WeldTrace.Documents.RecordSheets;
using WeldTrace.Documents.Tools;
using WeldTrace.Documents.Traveler;

namespace WeldTrace.Documents.Tests.Samples;

/// <summary>A document written and opened again.</summary>
internal static class WrittenPdf
{
    public static byte[] Bytes(TravelerModel model) =>
        Bytes(stream => TravelerExporter.Write(model, stream));

    public static byte[] Bytes(ProcedureSheetModel model) =>
        Bytes(stream => ProcedureSheetExporter.Write(model, stream));

    public static byte[] Bytes(ToolCardModel model) =>
        Bytes(stream => ToolCardExporter.Write(model, stream));

    public static byte[] Bytes(LabelSheetModel model) =>
        Bytes(stream => LabelSheetExporter.Write(model, stream));

    public static byte[] Bytes(RecordSheetModel model) =>
        Bytes(stream => RecordSheetExporter.Write(model, stream));

    /// <summary>The text of each page in the order in which it was written.</summary>
    public static string[] Pages(byte[] bytes)
    {
        using var pdf = PdfDocument.Open(bytes);
        return [.. pdf.GetPages().Select(page => ContentOrderTextExtractor.GetText(page))];
    }

    public static string Text(TravelerModel model) => Text(Bytes(model));

    public static string Text(byte[] bytes) => string.Join('\n', Pages(bytes));

    private static byte[] Bytes(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return stream.ToArray();
    }
}
