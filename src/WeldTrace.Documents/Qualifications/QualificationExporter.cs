using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Qualifications;

/// <summary>Writes a qualification record (WPQR) as a PDF.</summary>
public static class QualificationExporter
{
    /// <summary>Writes the whole file; the stream stays open. The same model gives the same text.</summary>
    public static void Write(QualificationModel model, Stream output)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(output);
        var settings = new DocumentSettings(QualificationDocument.Title(model), model.Stamp);
        FlowDocument.Write(settings, QualificationDocument.Blocks(model), output);
    }
}
