using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.TestReports;

/// <summary>Writes the certificate or report of one test as a PDF.</summary>
public static class TestReportExporter
{
    /// <summary>Writes the whole file; the stream stays open. The same model gives the same text.</summary>
    public static void Write(TestReportModel model, Stream output)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(output);
        var settings = new DocumentSettings(TestReportDocument.Title(model), model.Stamp);
        FlowDocument.Write(settings, TestReportDocument.Blocks(model), output);
    }
}
