namespace WeldTrace.ProcessLogs.Reading;

/// <summary>Takes a unit out of a column name such as "Fz [kN]", "Fz (kN)", "Fz / kN" or "Fz_kN".</summary>
internal static class HeaderName
{
    public static (string Name, string Unit) Split(string header)
    {
        var text = header.Trim();
        return Bracketed(text, '[', ']')
            ?? Bracketed(text, '(', ')')
            ?? After(text, '/')
            ?? After(text, ',')
            ?? After(text, '_')
            ?? After(text, ' ')
            ?? (text, "");
    }

    /// <summary>A unit as it may stand in a row of its own, brackets removed.</summary>
    public static string BareUnit(string text) => text.Trim().Trim('[', ']', '(', ')').Trim();

    private static (string, string)? Bracketed(string text, char open, char close)
    {
        var from = text.LastIndexOf(open);
        return from > 0 && text[^1] == close
            ? (text[..from].Trim(), text[(from + 1)..^1].Trim())
            : null;
    }

    private static (string, string)? After(string text, char mark)
    {
        var at = text.IndexOf(mark);
        while (at > 0)
        {
            var unit = text[(at + 1)..].Trim();
            if (LogUnits.Find(unit) is not null)
            {
                return (text[..at].Trim(), unit);
            }

            at = text.IndexOf(mark, at + 1);
        }

        return null;
    }
}
