using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Book;

/// <summary>Writes the history book of a vessel as a PDF: cover, contents with page numbers, and each chapter from a page of its own.</summary>
public static class HistoryBookExporter
{
    /// <summary>Writes the whole file; the stream stays open. The same model gives the same text.</summary>
    /// <returns>Number of pages.</returns>
    public static int Write(HistoryBookModel model, Stream output)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(output);
        var settings = new DocumentSettings($"History of vessel {model.Serial}", model.Stamp);
        Typefaces.Install();
        var body = new Flow();
        var lines = Place(model.Chapters, body);

        // The pages of the contents are counted first, since they move all that follows.
        var before = Front(model, lines, 0).Pages.Count;
        IReadOnlyList<IReadOnlyList<Action<Canvas>>> pages =
        [
            .. Front(model, lines, before).Pages,
            .. body.Pages,
        ];
        FlowDocument.Write(settings, pages, output, isForKeeping: true);
        return pages.Count;
    }

    private static List<ContentsEntry> Place(IReadOnlyList<BookChapter> chapters, Flow body)
    {
        List<ContentsEntry> lines = [];
        foreach (var chapter in chapters)
        {
            if (lines.Count > 0)
            {
                body.BeginPage();
            }

            lines.Add(new(chapter.Title, 1, body.Pages.Count));
            var known = body.Headings.Count;
            body.Place(chapter.Blocks());
            lines.AddRange(
                body.Headings.Skip(known)
                    .Where(h => h.Heading.Level == 2)
                    .Select(h => new ContentsEntry(h.Heading.Text, 2, h.Page))
            );
        }

        return lines;
    }

    private static Flow Front(
        HistoryBookModel model,
        IReadOnlyList<ContentsEntry> lines,
        int before
    )
    {
        var front = new Flow();
        front.Place([.. BookCover.Blocks(model)]);
        front.BeginPage();
        front.Place([
            new Heading("Contents", 1),
            .. lines.Select(l => new ContentsLine(l with { Page = l.Page + before })),
        ]);
        return front;
    }
}
