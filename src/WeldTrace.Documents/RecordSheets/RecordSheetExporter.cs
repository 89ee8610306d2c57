using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.RecordSheets;

/// <summary>Writes a report or certificate about one record as a PDF.</summary>
public static class RecordSheetExporter
{
    /// <summary>Writes the whole file; the stream stays open. The same model gives the same text.</summary>
    public static void Write(RecordSheetModel model, Stream output)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(output);
        FlowDocument.Write(
            new DocumentSettings(model.Title, model.Stamp),
            RecordSheetDocument.Blocks(model),
            output
        );
    }
}
