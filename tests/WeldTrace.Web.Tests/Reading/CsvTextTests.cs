using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Tests.Reading;

public sealed class CsvTextTests
{
    private static readonly string[] Heads = ["what"];

    // First characters that a spreadsheet takes for a formula: OWASP, CSV injection.
    [Theory]
    [InlineData("=HYPERLINK(\"http://x\")", "\"'=HYPERLINK(\"\"http://x\"\")\"")]
    [InlineData("+1+cmd", "'+1+cmd")]
    [InlineData("-1+cmd", "'-1+cmd")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\t=1", "'\t=1")]
    [InlineData("\r=1", "\"'\r=1\"")]
    [InlineData("-12.5", "-12.5")]
    [InlineData("+1e3", "+1e3")]
    [InlineData("a, b", "\"a, b\"")]
    [InlineData("two\nlines", "\"two\nlines\"")]
    [InlineData("plain", "plain")]
    [InlineData(null, "")]
    public async Task Cell_NeverBeginsAsAFormula_AndIsQuotedWhereItMust(string? typed, string cell)
    {
        IReadOnlyList<string?>[] rows =
        [
            [typed],
        ];
        var expected = $"\uFEFFwhat\r\n{cell}\r\n";

        Assert.Equal(expected, await TextAsync(CsvText.File("a.csv", Heads, rows)));
        Assert.Equal(
            expected,
            await TextAsync(CsvText.LongFile("a.csv", Heads, rows.ToAsyncEnumerable()))
        );
    }

    private static async Task<string> TextAsync(IResult file)
    {
        await using var services = new ServiceCollection().AddLogging().BuildServiceProvider();
        using var body = new MemoryStream();
        var http = new DefaultHttpContext
        {
            RequestServices = services,
            Response = { Body = body },
        };
        await file.ExecuteAsync(http);
        return new UTF8Encoding(false).GetString(body.ToArray());
    }
}
