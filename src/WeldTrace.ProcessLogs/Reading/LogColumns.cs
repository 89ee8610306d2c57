namespace WeldTrace.ProcessLogs.Reading;

/// <summary>The columns that a file says it has.</summary>
internal static class LogColumns
{
    public static IReadOnlyList<PreviewColumn> Read(ReadOnlySpan<byte> text, LogDialect dialect)
    {
        var plain = dialect.HasByteOrderMark ? text[3..] : text;
        var delimiter = (byte)dialect.Delimiter;
        var count = FieldSplitter.Count(TextLines.Get(plain, CountingLine(dialect)), delimiter);
        var units = HeaderRows.Fields(TextLines.Get(plain, dialect.UnitLine), delimiter);
        var names = HeaderRows.Names(TextLines.Get(plain, dialect.HeaderLine), delimiter, count);
        return
        [
            .. names.Select(
                (header, i) =>
                    Column(header, dialect.UnitLine > 0 && i < units.Count ? units[i] : "")
            ),
        ];
    }

    /// <summary>The header tells the number of columns; without one, the first row does.</summary>
    private static int CountingLine(LogDialect dialect) =>
        dialect.HeaderLine > 0 ? dialect.HeaderLine : dialect.FirstDataLine;

    private static PreviewColumn Column(string header, string unitBelow)
    {
        var (name, unit) = HeaderName.Split(header);
        var below = HeaderName.BareUnit(unitBelow);
        return new PreviewColumn(
            header,
            name,
            below.Length > 0 ? below : unit,
            UnitIsBelow: below.Length > 0,
            IsNumeric: true
        );
    }
}
