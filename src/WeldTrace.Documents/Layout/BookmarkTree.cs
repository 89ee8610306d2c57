using PdfSharp.Pdf;

namespace WeldTrace.Documents.Layout;

/// <summary>The outline beside the pages, nested by heading level.</summary>
internal sealed class BookmarkTree(PdfDocument document)
{
    private readonly Stack<(int Level, PdfOutline Entry)> _open = new();

    /// <summary>Adds an entry; <paramref name="top"/> counts upwards from the foot of the page, as PDF does.</summary>
    public void Add(string title, int level, PdfPage page, double top)
    {
        while (_open.TryPeek(out var last) && last.Level >= level)
        {
            _open.Pop();
        }

        var siblings = _open.TryPeek(out var parent) ? parent.Entry.Outlines : document.Outlines;
        var entry = siblings.Add(title, page, opened: level == 1);
        entry.PageDestinationType = PdfPageDestinationType.Xyz;
        entry.Left = 0;
        entry.Top = top;
        _open.Push((level, entry));
    }
}
