using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Labels;

/// <summary>Writes a sheet of labels as a PDF.</summary>
public static class LabelSheetExporter
{
    /// <summary>Writes the whole file; the stream stays open. The same model gives the same text.</summary>
    public static void Write(LabelSheetModel model, Stream output)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(output);
        var settings = new DocumentSettings($"Labels of {model.Subject}", model.Stamp);
        Block[] blocks =
        [
            .. model.Labels.Chunk(model.Columns).Select(row => new LabelRow(row, model.Columns)),
        ];
        FlowDocument.Write(
            settings,
            blocks.Length > 0 ? blocks : [new Paragraph("No label was chosen.")],
            output
        );
    }
}
