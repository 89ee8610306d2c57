using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>Writes a vessel's traveler as a PDF.</summary>
public static class TravelerExporter
{
    /// <summary>Writes the whole file; the stream stays open. The same model gives the same text.</summary>
    public static void Write(TravelerModel model, Stream output)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(output);
        var settings = new DocumentSettings($"Vessel traveler {model.Vessel.Serial}", model.Stamp);
        FlowDocument.Write(settings, TravelerDocument.Blocks(model), output);
    }
}
