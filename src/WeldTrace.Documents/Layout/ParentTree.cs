using PdfSharp.Pdf;

namespace WeldTrace.Documents.Layout;

/// <summary>
/// The tree that leads from what is on a page to its tags. PDFsharp searches it anew for every piece of text, so the entries of finished
/// pages are kept aside until the document is written; else a long book takes a time that grows with the square of its pages.
/// </summary>
internal sealed class ParentTree(PdfDocument document)
{
    private readonly List<(int Key, PdfItem Value)> _finished = [];

    // Numbers alternate with what they lead to (ISO 32000-1, 7.9.7).
    private PdfArray? Numbers =>
        document
            .Internals.Catalog.Elements.GetDictionary("/StructTreeRoot")
            ?.Elements.GetDictionary("/ParentTree")
            ?.Elements.GetArray("/Nums");

    public void FinishPage()
    {
        if (Numbers is not { } numbers)
        {
            return;
        }

        for (var i = 0; i + 1 < numbers.Elements.Count; i += 2)
        {
            _finished.Add((numbers.Elements.GetInteger(i), numbers.Elements[i + 1]));
        }

        numbers.Elements.Clear();
    }

    public void Restore()
    {
        FinishPage();
        foreach (var (key, value) in _finished.OrderBy(f => f.Key))
        {
            Numbers!.Elements.Add(new PdfInteger(key));
            Numbers.Elements.Add(value);
        }
    }
}
