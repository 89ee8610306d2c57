using System.Security.Cryptography;

namespace WeldTrace.Web.Security;

/// <summary>The word in the QR code of a badge. It names its owner at a shared tablet and proves nothing; only its hash is kept.</summary>
public static class BadgeWord
{
    // Upper-case letters that stand at one place on most keyboard layouts, and digits: a scanner types as a keyboard does.
    private const string Mark = "BADGE";
    private const int Bytes = 20;

    /// <summary>A new word: 160 random bits, in digits and the letters A to F.</summary>
    public static string New() => Mark + RandomNumberGenerator.GetHexString(Bytes * 2);

    /// <summary>Whether what was scanned has the form of one.</summary>
    public static bool IsOne(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length == Mark.Length + (Bytes * 2)
            && text.StartsWith(Mark, StringComparison.Ordinal)
            && text.Skip(Mark.Length).All(char.IsAsciiHexDigitUpper);
    }
}
