using System.Text;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using WeldTrace.Documents.Layout;
using Xunit;

namespace WeldTrace.Documents.Tests.Layout;

public sealed class FontFaceTests
{
    private const string TradeCharacters = "½≥≤µ°Ø–³·₂×±−²⁻⁵¹…“”’‘—éãçñüß€§";

    public static TheoryData<string> Faces => ["Regular", "Italic", "SemiBold"];

    [Theory]
    [MemberData(nameof(Faces))]
    public void Covers_CharactersOfTheTrade_HasAGlyphForEach(string name)
    {
        var missing = TradeCharacters.EnumerateRunes().Where(rune => !Face(name).Covers(rune));

        Assert.Empty(missing);
    }

    [Theory]
    [MemberData(nameof(Faces))]
    public void Covers_CharacterOutsideTheFont_SaysNo(string name)
    {
        Assert.False(Face(name).Covers(new Rune('漢')));
        Assert.False(Face(name).Covers(new Rune(0x1F600)));
    }

    [Theory]
    [MemberData(nameof(Faces))]
    public void Width_AnyText_EqualsWhatThePdfLibraryMeasures(string name)
    {
        Typefaces.Install();
        using var document = new PdfDocument();
        using var graphics = XGraphics.FromPdfPage(document.AddPage());
        var options = new XPdfFontOptions(PdfFontEncoding.Unicode);
        var font = new XFont(Face(name).Family, 9.5, XFontStyleEx.Regular, options);
        const string Text = "Weld pitch 0.25 mm/rev, AV To ½ ≥ 120.4 bar · Ø 168 mm";

        var measured = graphics.MeasureString(Text, font).Width;

        Assert.Equal(measured, Face(name).Width(Text, 9.5), 2);
    }

    [Theory]
    [MemberData(nameof(Faces))]
    public void Width_Digits_AreAllEqual(string name)
    {
        var zero = Face(name).Width("0", 1);

        Assert.All("123456789", digit => Assert.Equal(zero, Face(name).Width([digit], 1), 0.0015));
    }

    private static FontFace Face(string name) =>
        name switch
        {
            "Regular" => Typefaces.Regular,
            "Italic" => Typefaces.Italic,
            _ => Typefaces.SemiBold,
        };
}
