using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Procedures;

/// <summary>Writes a pWPS or WPS as a PDF.</summary>
public static class ProcedureSheetExporter
{
    /// <summary>Writes the whole file; the stream stays open. The same model gives the same text.</summary>
    public static void Write(ProcedureSheetModel model, Stream output)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(output);
        var settings = new DocumentSettings(ProcedureDocument.Title(model.Identity), model.Stamp);
        FlowDocument.Write(settings, ProcedureDocument.Blocks(model), output);
    }
}
