namespace WeldTrace.Domain.Ledger;

/// <summary>What the texts of an entry may hold.</summary>
internal static class LedgerText
{
    public static string Line(string value, int maximumLength, string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(value, name);
        if (value.Any(char.IsControl))
        {
            throw new ArgumentException("The text must be one line of printing characters.", name);
        }
        return Bounded(value, maximumLength, name);
    }

    public static string Paragraphs(string value, int maximumLength, string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(value, name);
        if (value.Contains('\0', StringComparison.Ordinal))
        {
            throw new ArgumentException("The text holds a zero character.", name);
        }
        return Bounded(value, maximumLength, name);
    }

    public static string Kind(string value, string name)
    {
        Line(value, 50, name);
        if (!value.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-'))
        {
            throw new ArgumentException("A kind has lower-case letters, digits and hyphens.", name);
        }
        return value;
    }

    public static string Sha256Hex(string value, string name)
    {
        ArgumentNullException.ThrowIfNull(value, name);
        return value.Length == 64 && value.All(char.IsAsciiHexDigitLower)
            ? value
            : throw new ArgumentException("Expected 64 lower-case hexadecimal digits.", name);
    }

    private static string Bounded(string value, int maximumLength, string name)
    {
        if (value.Length > maximumLength)
        {
            throw new ArgumentException(
                $"The text has more than {maximumLength} characters.",
                name
            );
        }
        try
        {
            _ = StrictJson.ToUtf8(value);
            return value;
        }
        catch (CanonicalJsonException error)
        {
            throw new ArgumentException(error.Message, name, error);
        }
    }
}
