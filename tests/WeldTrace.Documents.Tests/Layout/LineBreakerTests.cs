using WeldTrace.Documents.Layout;
using Xunit;

namespace WeldTrace.Documents.Tests.Layout;

public sealed class LineBreakerTests
{
    private const string Sentence =
        "The axial force stood above 8.20\u00A0kN for 5.4\u00A0s, up to 8.64\u00A0kN, between 101\u00A0mm and 119\u00A0mm.";

    [Theory]
    [InlineData(40)]
    [InlineData(90)]
    [InlineData(200)]
    public void Break_AnyWidth_KeepsEachLineInsideIt(double width)
    {
        var lines = LineBreaker.Break(Sentence, Styles.Body, width);

        Assert.All(lines, line => Assert.True(Styles.Body.Width(line) <= width));
    }

    [Fact]
    public void Break_NarrowColumn_LosesNothing()
    {
        var lines = LineBreaker.Break(Sentence, Styles.Body, 90);

        Assert.Equal(Sentence.Replace('\u00A0', ' '), string.Join(' ', lines));
    }

    [Fact]
    public void Break_NumberWithItsUnit_StayOnOneLine()
    {
        var lines = LineBreaker.Break(Sentence, Styles.Body, 90);

        Assert.Contains(lines, line => line.Contains("8.64 kN", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, line => line.StartsWith("kN", StringComparison.Ordinal));
    }

    [Fact]
    public void Break_WordWiderThanTheColumn_CutsItWithoutLoss()
    {
        var serial = new string('W', 5000);

        var lines = LineBreaker.Break(serial, Styles.Body, 120);

        Assert.Equal(serial, string.Concat(lines));
        Assert.All(lines, line => Assert.True(Styles.Body.Width(line) <= 120));
    }

    [Fact]
    public void Break_LongAddress_CutsAfterASlash()
    {
        var lines = LineBreaker.Break("https://site.example/vessels/NR-0417", Styles.Body, 120);

        Assert.EndsWith("/", lines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Break_ColumnNarrowerThanOneLetter_StillEnds() =>
        Assert.Equal(["W", "W"], LineBreaker.Break("WW", Styles.Body, 1));

    [Fact]
    public void Fit_TextTooWide_EndsInAnEllipsisInsideTheWidth()
    {
        var line = LineBreaker.Fit(Sentence, Styles.Small, 100);

        Assert.EndsWith("…", line, StringComparison.Ordinal);
        Assert.True(Styles.Small.Width(line) <= 100);
    }

    [Fact]
    public void Fit_TextThatFits_IsUnchanged() =>
        Assert.Equal("page 1", LineBreaker.Fit("page 1", Styles.Small, 100));
}
