using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Tools;

/// <summary>Writes a tool's card as a PDF.</summary>
public static class ToolCardExporter
{
    /// <summary>Writes the whole file; the stream stays open. The same model gives the same text.</summary>
    public static void Write(ToolCardModel model, Stream output)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(output);
        var settings = new DocumentSettings($"Tool card {model.Serial}", model.Stamp);
        FlowDocument.Write(settings, ToolCardDocument.Blocks(model), output);
    }
}
