using PdfSharp.Drawing;

namespace WeldTrace.Documents.Layout;

/// <summary>Greys for each tone and the pens made from them.</summary>
internal static class Ink
{
    public static XBrush Brush(Tone tone) => new XSolidBrush(Colour(tone));

    public static XPen Pen(Tone tone, double weight) =>
        new(Colour(tone), weight) { LineJoin = XLineJoin.Round, LineCap = XLineCap.Flat };

    private static XColor Colour(Tone tone) => XColor.FromGrayScale(Lightness(tone));

    private static double Lightness(Tone tone) =>
        tone switch
        {
            Tone.Ink => 0.08,
            Tone.Quiet => 0.36,
            Tone.Rule => 0.6,
            Tone.Band => 0.84,
            Tone.Tint => 0.94,
            Tone.Paper => 1,
            _ => throw new ArgumentOutOfRangeException(nameof(tone), tone, null),
        };
}
