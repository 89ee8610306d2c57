using System.Text;

namespace WeldTrace.ProcessLogs.Reading;

/// <summary>The names and units above the data.</summary>
internal static class HeaderRows
{
    private const int LongestName = 200;

    /// <summary>Whether each field is empty, a unit or in brackets, and at least one is a known unit.</summary>
    public static bool IsUnitRow(ReadOnlySpan<byte> line, byte delimiter)
    {
        var anyUnit = false;
        foreach (var field in Fields(line, delimiter))
        {
            var unit = HeaderName.BareUnit(field);
            var isKnown = unit.Length > 0 && LogUnits.Find(unit) is not null;
            anyUnit |= isKnown;
            if (
                !isKnown
                && unit.Length > 0
                && unit is not ("-" or "1" or "%")
                && unit == field.Trim()
            )
            {
                return false;
            }
        }

        return anyUnit;
    }

    /// <summary>Column names; a missing or empty name becomes "column n".</summary>
    public static IReadOnlyList<string> Names(ReadOnlySpan<byte> header, byte delimiter, int count)
    {
        var fields = Fields(header, delimiter);
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(i => i < fields.Count ? fields[i] : "")
                .Select((name, i) => name.Length == 0 ? $"column {i + 1}" : name),
        ];
    }

    public static List<string> Fields(ReadOnlySpan<byte> line, byte delimiter)
    {
        var fields = new List<string>();
        var splitter = new FieldSplitter(line.TrimStart("#"u8), delimiter);
        while (splitter.TryNext(out var field))
        {
            var text = Encoding.UTF8.GetString(FieldSplitter.Bare(field)).Trim();
            fields.Add(text.Length > LongestName ? text[..LongestName] : text);
        }

        return fields;
    }
}
