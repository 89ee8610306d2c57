using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.CalculationSheets;

/// <summary>Writes a calculation sheet as a PDF.</summary>
public static class CalculationSheetExporter
{
    /// <summary>Writes the whole file; the stream stays open. The same model gives the same text.</summary>
    public static void Write(CalculationSheetModel model, Stream output)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(output);
        var settings = new DocumentSettings(
            $"Calculation sheet, {model.Calculation.Title}",
            model.Stamp
        );
        FlowDocument.Write(settings, CalculationSheetDocument.Blocks(model), output);
    }
}
