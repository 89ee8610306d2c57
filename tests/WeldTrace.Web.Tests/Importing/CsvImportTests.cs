using System.Text;
using Microsoft.AspNetCore.Http;
using WeldTrace.Web.Importing;

namespace WeldTrace.Web.Tests.Importing;

public sealed class CsvImportTests
{
    private static readonly ImportColumn[] Columns =
    [
        new("mark", "the mark", true),
        new("note", "a remark"),
    ];

    /// <summary>RFC 4180 section 2: quoted cells may hold separators, doubled quotation marks and line breaks.</summary>
    [Theory]
    [InlineData("mark,note\r\nT-1,plain\r\n", "T-1", "plain")]
    [InlineData("mark;note\nT-1;plain", "T-1", "plain")]
    [InlineData("mark\tnote\nT-1\tplain", "T-1", "plain")]
    [InlineData("\uFEFFMark , Note\nT-1,\"a, b\"", "T-1", "a, b")]
    [InlineData("mark,note\nT-1,\"he said \"\"no\"\"\"", "T-1", "he said \"no\"")]
    [InlineData("mark,note\nT-1,\"two\nlines\"", "T-1", "two\nlines")]
    [InlineData("note,mark\n'=1+1,T-1", "T-1", "=1+1")]
    [InlineData("mark,note,,\nT-1,plain,,", "T-1", "plain")]
    [InlineData("mark\nT-1", "T-1", "")]
    [InlineData("mark,state,note\nT-1,in store,plain", "T-1", "plain")]
    public void Read_GoodText_GivesItsCells(string text, string mark, string note)
    {
        var read = CsvImport.Read(text, Columns, ["state"]);

        Assert.Empty(read.Problems);
        var row = Assert.Single(read.Rows);
        Assert.Equal((mark, note), (row["mark"], row["note"]));
    }

    [Theory]
    [InlineData("", "nothing to read")]
    [InlineData("  \n ", "nothing to read")]
    [InlineData("mark,note", "at least one line")]
    [InlineData(",,\n,,", "at least one line")]
    [InlineData("note\nx", "no column 'mark'")]
    [InlineData("mark,colour\nT-1,red", "'colour' isn't known")]
    [InlineData("mark,mark\nT-1,T-2", "stands twice")]
    [InlineData("mark,note\nT-1,12,5", "Line 2 has 3 cells")]
    [InlineData("mark,note\nT-1,ok\nT-2,\"open", "Line 3 can't be read")]
    [InlineData("mark,note\nT-1,\"a\"b", "Line 2 can't be read")]
    [InlineData("PK\u0003\u0004\0\0", "no text")]
    public void Read_BadText_SaysWhatAndWhere(string text, string words)
    {
        var read = CsvImport.Read(text, Columns);

        Assert.Empty(read.Rows);
        Assert.Contains(read.Problems, p => p.Sentence.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void Read_TooManyLines_Refused()
    {
        var text = new StringBuilder("mark\n");
        for (var i = 0; i <= CsvImport.MostRows; i++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"T-{i}\n");
        }

        Assert.Contains(
            "2001 lines",
            Assert.Single(CsvImport.Read(text.ToString(), Columns).Problems).Sentence,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Read_LinesAfterABreakInACell_AreCountedRight()
    {
        var read = CsvImport.Read("mark,note\nT-1,\"two\nlines\"\n\nT-2,x", Columns);

        Assert.Equal([2, 5], read.Rows.Select(r => r.Line));
    }

    [Fact]
    public async Task TextOf_FileWithByteOrderMark_IsItsText()
    {
        byte[] bytes = [.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes("mark\nT-Ø1")];
        var form = new ImportForm
        {
            Text = "older",
            File = new FormFile(new MemoryStream(bytes), 0, bytes.Length, "In.File", "list.csv"),
        };

        Assert.Equal("mark\nT-Ø1", await CsvImport.TextOfAsync(form, CancellationToken.None));
        Assert.Equal(
            "older",
            await CsvImport.TextOfAsync(new() { Text = "older" }, CancellationToken.None)
        );
    }
}
