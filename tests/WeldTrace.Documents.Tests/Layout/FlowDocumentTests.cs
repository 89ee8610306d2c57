using UglyToad.PdfPig;
using WeldTrace.Documents.Layout;
using WeldTrace.Documents.Tests.Samples;
using Xunit;

namespace WeldTrace.Documents.Tests.Layout;

public sealed class FlowDocumentTests
{
    private static readonly TableColumn[] Columns = [new("Seam", 1), new("Reading", 3)];

    [Fact]
    public void Write_TableLongerThanAPage_RepeatsItsHeadingRow()
    {
        var rows = Enumerable.Range(1, 120).Select(i => Row($"row{i}", "6.02 bar"));

        var pages = Pages(new Table(Columns, [.. rows]));

        Assert.True(pages.Length > 1);
        Assert.All(pages, text => Assert.Contains("Reading", text, StringComparison.Ordinal));
        Assert.All(
            Enumerable.Range(1, 120),
            i => Assert.Single(pages, text => Words(text).Contains($"row{i}"))
        );
    }

    [Fact]
    public void Write_RowThatDoesNotFit_MovesAsAWhole()
    {
        var filler = Enumerable.Range(1, 38).Select(i => Row($"row{i}", "x"));
        var tall = Row("first", string.Join('\n', Enumerable.Range(1, 20).Select(i => $"line{i}")));

        var pages = Pages(new Table(Columns, [.. filler, tall]));

        Assert.Equal(2, pages.Length);
        Assert.DoesNotContain("line1", Words(pages[0]));
        Assert.Contains("line1", Words(pages[1]));
        Assert.Contains("line20", Words(pages[1]));
    }

    [Fact]
    public void Write_RowTallerThanAPage_IsDividedWithoutLoss()
    {
        var tall = string.Join('\n', Enumerable.Range(1, 200).Select(i => $"line{i}"));

        var pages = Pages(new Table(Columns, [Row("first", tall) with { Note = "why" }]));

        Assert.True(pages.Length > 2);
        Assert.All(
            Enumerable.Range(1, 200),
            i => Assert.Single(pages, text => Words(text).Contains($"line{i}"))
        );
        Assert.Contains("why", Words(pages[^1]));
    }

    [Fact]
    public void Write_HeadingBeforeATableThatMoves_GoesWithIt()
    {
        var pages = Pages(new Gap(640), new Heading("Stages", 3), ShortTable(8));

        Assert.DoesNotContain("Stages", Words(pages[0]));
        Assert.Contains("Stages", Words(pages[1]));
    }

    [Fact]
    public void Write_HeadingAndFormulaBeforeATableThatMoves_GoWithIt()
    {
        var pages = Pages(
            new Gap(620),
            new Heading("Stages", 3),
            new Paragraph("E = m·c²", keepsWithNext: true),
            ShortTable(8)
        );

        Assert.DoesNotContain("Stages", Words(pages[0]));
        Assert.Contains("Stages", Words(pages[1]));
    }

    [Fact]
    public void Write_LongParagraph_RunsOverPages()
    {
        var text = string.Join(' ', Enumerable.Range(1, 3000).Select(i => $"word{i}"));

        var pages = Pages(new Paragraph(text));

        Assert.True(pages.Length > 1);
        Assert.Contains("word1", Words(pages[0]));
        Assert.Contains("word3000", Words(pages[^1]));
    }

    [Fact]
    public void Write_SideBySideTallerThanAPage_StandsBelowEachOther()
    {
        var pages = Pages(new SideBySide(new Paragraph("left"), ShortTable(90), 0.4));

        Assert.Contains("left", Words(pages[0]));
        Assert.Contains("row90", Words(string.Join(' ', pages)));
    }

    [Fact]
    public void Write_Notice_TallerThanAPage_LosesNothing()
    {
        var lines = Enumerable.Range(1, 90).Select(i => $"limit{i}").ToArray();

        var text = string.Join(' ', Pages(new Notice("Unchecked", lines, MarkShape.Triangle)));

        Assert.All(lines, line => Assert.Contains(line, Words(text)));
    }

    [Fact]
    public void Write_AllText_StaysInsideThePage()
    {
        var tall = string.Join('\n', Enumerable.Range(1, 200).Select(i => $"line{i}"));
        var bytes = Bytes(
            new Heading(new string('M', 400), 1),
            new Table(Columns, [Row("a", tall)])
        );

        using var pdf = PdfDocument.Open(bytes);

        Assert.All(
            pdf.GetPages().SelectMany(page => page.Letters),
            letter => Assert.InRange(letter.StartBaseLine.Y, 18, PageGeometry.Height - 40)
        );
        Assert.All(
            pdf.GetPages().SelectMany(page => page.Letters),
            letter => Assert.InRange(letter.EndBaseLine.X, 50, PageGeometry.Right + 1)
        );
    }

    private static Table ShortTable(int rows) =>
        new(Columns, [.. Enumerable.Range(1, rows).Select(i => Row($"row{i}", "x"))]);

    private static TableRow Row(string name, string text) => new([name, text]);

    private static string[] Words(string text) =>
        text.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries);

    private static byte[] Bytes(params Block[] blocks)
    {
        using var stream = new MemoryStream();
        FlowDocument.Write(new DocumentSettings("Trial", SampleTraveler.Stamp), blocks, stream);
        return stream.ToArray();
    }

    private static string[] Pages(params Block[] blocks) => WrittenPdf.Pages(Bytes(blocks));
}
