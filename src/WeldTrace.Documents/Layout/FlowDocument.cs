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
        Write(settings, flow.Pages, output);
    }

    /// <param name="settings">What the document says about itself.</param>
    /// <param name="pages">What is painted on each page.</param>
    /// <param name="output">Stays open.</param>
    /// <param name="isForKeeping">Whether it is prepared for archives as PDF/A-1a (ISO 19005-1).</param>
    public static void Write(
        DocumentSettings settings,
        IReadOnlyList<IReadOnlyList<Action<Canvas>>> pages,
        Stream output,
        bool isForKeeping = false
    )
    {
        using var document = new PdfDocument();
        if (isForKeeping)
        {
            document.SetPdfA();
        }

        var canvas = new Canvas(document);
        Describe(document, settings);
        for (var page = 0; page < pages.Count; page++)
        {
            canvas.BeginPage();
            foreach (var paint in pages[page])
            {
                paint(canvas);
            }

            Footer.Draw(canvas, settings, page + 1, pages.Count);
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
