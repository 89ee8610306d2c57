using System.Text;
using System.Text.RegularExpressions;
using PdfSharp.Pdf;
using PdfSharp.Pdf.IO;
using WeldTrace.Documents.Layout;
using WeldTrace.Documents.Tests.Samples;
using Xunit;

namespace WeldTrace.Documents.Tests.Layout;

public sealed class ParentTreeTests
{
    /// <summary>ISO 32000-1, 14.7.4.4: the page's number leads to one entry for each piece of marked content, and numbers ascend.</summary>
    [Fact]
    public void EveryPieceOfContent_OfEveryPage_LeadsToItsTag()
    {
        TableColumn[] columns = [new("Seam", 1), new("Reading", 3)];
        var rows = Enumerable.Range(1, 120).Select(i => new TableRow([$"row {i}", "6.02 bar"]));
        using MemoryStream output = new();
        FlowDocument.Write(
            new DocumentSettings("Trial", SampleTraveler.Stamp),
            [new Heading("Readings", 1), new Table(columns, [.. rows])],
            output
        );
        using var document = PdfReader.Open(output, PdfDocumentOpenMode.Import);

        var numbers = document
            .Internals.Catalog.Elements.GetDictionary("/StructTreeRoot")!
            .Elements.GetDictionary("/ParentTree")!
            .Elements.GetArray("/Nums")!;

        var keys = Enumerable
            .Range(0, numbers.Elements.Count / 2)
            .Select(i => numbers.Elements.GetInteger(2 * i))
            .ToList();
        Assert.True(document.PageCount > 2);
        Assert.Equal(keys.Order().Distinct(), keys);
        Assert.All(
            document.Pages.Cast<PdfPage>(),
            page =>
            {
                var at = keys.IndexOf(page.Elements.GetInteger("/StructParents"));
                Assert.Equal(Marked(page), numbers.Elements.GetArray((2 * at) + 1)!.Elements.Count);
            }
        );
    }

    private static int Marked(PdfPage page) =>
        Regex.Count(
            Encoding.Latin1.GetString(page.Contents.CreateSingleContent().Stream!.UnfilteredValue),
            "/MCID"
        );
}
