using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.LaboratoryReports;

/// <summary>Writes the report of a test as a PDF.</summary>
public static class LaboratoryReportExporter
{
    /// <summary>Writes the whole file; the stream stays open. The same model gives the same text.</summary>
    public static void Write(LaboratoryReportModel model, Stream output)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(output);
        var settings = new DocumentSettings(model.Title, model.Stamp);
        FlowDocument.Write(settings, LaboratoryReportDocument.Blocks(model), output);
    }
}
