using UglyToad.PdfPig;

namespace WeldTrace.Browser.Tests;

/// <summary>What a reader of a PDF file sees.</summary>
internal static class PdfText
{
    public static string Of(byte[] file)
    {
        using var document = PdfDocument.Open(file);
        return string.Join('\n', document.GetPages().Select(p => p.Text));
    }

    /// <summary>Letters and digits alone: lines may break anywhere.</summary>
    public static string Letters(string text) => string.Concat(text.Where(char.IsLetterOrDigit));
}
