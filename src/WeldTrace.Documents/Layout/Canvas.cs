using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Annotations;
using PdfSharp.UniversalAccessibility;

namespace WeldTrace.Documents.Layout;

/// <summary>Writes text, lines and structure tags on the current page of a PDF.</summary>
internal sealed class Canvas
{
    private static readonly XPdfFontOptions FontOptions = new(PdfFontEncoding.Unicode);

    private readonly PdfDocument _document;
    private readonly StructureBuilder _structure;
    private readonly Dictionary<(string Family, double Size), XFont> _fonts = [];
    private readonly BookmarkTree _bookmarks;
    private readonly ParentTree _parents;
    private PdfPage? _page;
    private XGraphics? _graphics;

    public Canvas(PdfDocument document)
    {
        _document = document;
        _structure = UAManager.ForDocument(document).StructureBuilder;
        _bookmarks = new BookmarkTree(document);
        _parents = new ParentTree(document);
    }

    public XGraphics Graphics => _graphics ?? throw new InvalidOperationException("No page begun.");

    public void BeginPage()
    {
        _graphics?.Dispose();
        _parents.FinishPage();
        _page = _document.AddPage();
        _page.Width = XUnit.FromPoint(PageGeometry.Width);
        _page.Height = XUnit.FromPoint(PageGeometry.Height);
        _graphics = XGraphics.FromPdfPage(_page);
    }

    public void End()
    {
        _graphics?.Dispose();
        _parents.Restore();
    }

    public void Tagged(PdfBlockLevelElementTag tag, Action draw)
    {
        _structure.BeginElement(tag);
        draw();
        _structure.End();
    }

    /// <summary>Opens an element that may go on over the page's end.</summary>
    public void Open(PdfBlockLevelElementTag tag) => _structure.BeginElement(tag);

    public void Close() => _structure.End();

    /// <summary>Says that the open table cell reaches over several columns.</summary>
    public void SpanColumns(int columns) => _structure.SetColSpan(columns);

    public void Figure(string alternativeText, Area area, Action draw)
    {
        // The box is written as it is given, so it counts upwards from the foot of the page.
        var foot = PageGeometry.Height - area.Bottom;
        var box = new XRect(area.X, foot, area.Width, area.Height);
        var alternative = PrintableText.OnOneLine(alternativeText, Typefaces.Regular);
        _structure.BeginElement(PdfIllustrationElementTag.Figure, alternative, box);
        draw();
        _structure.End();
    }

    /// <summary>Draws what carries no meaning of its own: rules, bands, the page's foot.</summary>
    public void Decoration(Action draw)
    {
        _structure.BeginArtifact();
        draw();
        _structure.End();
    }

    public void Bookmark(string title, int level, double y) =>
        _bookmarks.Add(title, level, _page!, PageGeometry.Height - y);

    /// <summary>One line of text that has already passed through <see cref="LineBreaker"/>; y is the top of the line.</summary>
    public void Text(string line, TextStyle style, double x, double y)
    {
        if (line.Length > 0)
        {
            Graphics.DrawString(line, Font(style), Ink.Brush(style.Tone), x, y + style.Baseline);
        }
    }

    public void TextRight(string line, TextStyle style, double right, double y) =>
        Text(line, style, right - style.Width(line), y);

    public void Rule(double x1, double y1, double x2, double y2, double weight, Tone tone) =>
        Graphics.DrawLine(Ink.Pen(tone, weight), x1, y1, x2, y2);

    public void Fill(Area area, Tone tone) =>
        Graphics.DrawRectangle(Ink.Brush(tone), area.X, area.Y, area.Width, area.Height);

    public void Disc(double x, double y, double radius, Tone tone) =>
        Graphics.DrawEllipse(Ink.Brush(tone), x - radius, y - radius, 2 * radius, 2 * radius);

    /// <summary>Draws inside a link to a web address.</summary>
    public void Link(Area area, string address, Action draw)
    {
        var link = PdfLinkAnnotation.CreateWebLink(Box(area), address);
        Link(link, address, draw);
    }

    /// <summary>Draws inside a link to a page of the document.</summary>
    public void LinkWithin(Area area, int page, string alternativeText, Action draw)
    {
        var link = PdfLinkAnnotation.CreateDocumentLink(Box(area), page);
        Link(link, alternativeText, draw);
    }

    // ISO 19005-1, 6.5.3: an annotation without this flag has no place in a file for keeping.
    private void Link(PdfLinkAnnotation link, string alternativeText, Action draw)
    {
        link.Flags = PdfAnnotationFlags.Print;
        _structure.BeginElement(link, alternativeText);
        draw();
        _structure.End();
    }

    private PdfRectangle Box(Area area) =>
        new(
            Graphics.Transformer.WorldToDefaultPage(
                new XRect(area.X, area.Y, area.Width, area.Height)
            )
        );

    private XFont Font(TextStyle style)
    {
        var key = (style.Face.Family, style.Size);
        if (!_fonts.TryGetValue(key, out var font))
        {
            font = new XFont(style.Face.Family, style.Size, XFontStyleEx.Regular, FontOptions);
            _fonts.Add(key, font);
        }

        return font;
    }
}
