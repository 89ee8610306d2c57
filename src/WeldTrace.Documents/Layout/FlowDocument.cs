using PdfSharp.Pdf;

namespace WeldTrace.Documents.Layout;

/// <summary>Lays blocks out on pages and writes them as a tagged PDF.</summary>
internal static class FlowDocument
{
    public static void Write(DocumentSettings settings, IReadOnlyList<Block> blocks, Stream output)
    {
        Typefaces.Install();
        var flow = new Flow();
        flow.Place(blocks);

        using var document = new PdfDocument();
        var canvas = new Canvas(document);
        Describe(document, settings);
        for (var page = 0; page < flow.Pages.Count; page++)
        {
            canvas.BeginPage();
            foreach (var paint in flow.Pages[page])
            {
                paint(canvas);
            }

            Footer.Draw(canvas, settings, page + 1, flow.Pages.Count);
        }

        canvas.End();
        document.Save(output, closeStream: false);
    }

    private static void Describe(PdfDocument document, DocumentSettings settings)
    {
        var stamp = settings.Stamp;
        document.Language = DocumentSettings.Language;
        document.Info.Title = PrintableText.OnOneLine(settings.Title, Typefaces.Regular);
        document.Info.Author = PrintableText.OnOneLine(stamp.PrintedBy, Typefaces.Regular);
        document.Info.Creator = PrintableText.OnOneLine(stamp.SiteName, Typefaces.Regular);
        document.Info.CreationDate = stamp.PrintedAt.UtcDateTime;
        document.Info.ModificationDate = stamp.PrintedAt.UtcDateTime;
    }
}
