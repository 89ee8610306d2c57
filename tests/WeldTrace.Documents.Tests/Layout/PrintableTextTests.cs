using WeldTrace.Documents.Layout;
using Xunit;

namespace WeldTrace.Documents.Tests.Layout;

public sealed class PrintableTextTests
{
    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("  \t ")]
    public void From_NoText_IsAnEnDash(string? text) => Assert.Equal("–", Printable(text));

    [Theory]
    [InlineData("NR\u202E7140", "NR[U+202E]7140")]
    [InlineData("a\u200Bb", "a[U+200B]b")]
    [InlineData("bell\u0007", "bell[U+0007]")]
    [InlineData("nul\0", "nul[U+0000]")]
    [InlineData("soft\u00ADhyphen", "soft[U+00AD]hyphen")]
    public void From_WhatWouldNotBeSeen_SpellsItOut(string text, string printed) =>
        Assert.Equal(printed, Printable(text));

    [Theory]
    [InlineData("😀", "[U+1F600]")]
    [InlineData("漢", "[U+6F22]")]
    [InlineData("א", "[U+05D0]")]
    public void From_CharacterWithoutGlyph_SpellsItOut(string text, string printed) =>
        Assert.Equal(printed, Printable(text));

    [Fact]
    public void From_HalfOfASurrogatePair_IsReplacedVisibly() =>
        Assert.Matches("^x(\uFFFD|\\[U\\+FFFD\\])y$", Printable("x\uD83Dy"));

    [Fact]
    public void From_MarksThatDoNotCompose_AreSpeltOut() =>
        Assert.Equal("é e[U+0489]", Printable("e\u0301 e\u0489"));

    [Theory]
    [InlineData("a\r\nb\rc", "a\nb\nc")]
    [InlineData("a\u2028b", "a\nb")]
    [InlineData("a\tb", "a b")]
    [InlineData("3\u202Fmm", "3\u00A0mm")]
    [InlineData("5 \u03BCm", "5 µm")]
    [InlineData("well\u2011known", "well-known")]
    public void From_VariantsOfOneSign_AreMadeOne(string text, string printed) =>
        Assert.Equal(printed, Printable(text));

    [Fact]
    public void OnOneLine_SeveralLines_JoinsThem() =>
        Assert.Equal("a b c", PrintableText.OnOneLine("a\nb\u00A0c", Typefaces.Regular));

    private static string Printable(string? text) => PrintableText.From(text, Typefaces.Regular);
}
