namespace WeldTrace.ProcessLogs.Reading;

/// <summary>Guesses from the first lines how a log is written down.</summary>
internal static class DialectGuess
{
    private const int LinesInspected = 200;

    private static readonly (byte Delimiter, byte Mark)[] Candidates =
    [
        ((byte)'\t', (byte)'.'),
        ((byte)';', (byte)'.'),
        ((byte)',', (byte)'.'),
        ((byte)'|', (byte)'.'),
        ((byte)'\t', (byte)','),
        ((byte)';', (byte)','),
        ((byte)'|', (byte)','),
        ((byte)',', (byte)','),
    ];

    /// <summary>The best guess; none when no two fields of any line are numbers.</summary>
    /// <param name="head">First bytes of the file as UTF-8.</param>
    /// <param name="isWhole">Whether the file ends there.</param>
    public static LogDialect? From(ReadOnlySpan<byte> head, bool isWhole)
    {
        var hasMark = head is [0xEF, 0xBB, 0xBF, ..];
        var text = hasMark ? head[3..] : head;
        var lines = Lines(text, isWhole);
        var best = default(Table);
        foreach (var (delimiter, mark) in Candidates)
        {
            var table = Score(text, lines, delimiter, mark);
            best = table.Numbers > best.Numbers ? table : best;
        }

        return best.Numbers == 0 ? null : Describe(text, lines, best, hasMark);
    }

    private static List<Range> Lines(ReadOnlySpan<byte> text, bool isWhole)
    {
        var lines = new List<Range>();
        var from = 0;
        while (from < text.Length && lines.Count < LinesInspected)
        {
            var length = text[from..].IndexOf((byte)'\n');
            if (length < 0 && !isWhole && lines.Count > 0)
            {
                break;
            }

            var to = length < 0 ? text.Length : from + length;
            var end = to > from && text[to - 1] == (byte)'\r' ? to - 1 : to;
            lines.Add(from..end);
            from = to + 1;
        }

        return lines;
    }

    private static Table Score(
        ReadOnlySpan<byte> text,
        List<Range> lines,
        byte delimiter,
        byte mark
    )
    {
        var tables = new Dictionary<int, Table>();
        for (var i = 0; i < lines.Count; i++)
        {
            var (fields, numbers) = Numbers(text[lines[i]], delimiter, mark);
            if (fields >= 2 && numbers * 2 >= fields)
            {
                var table = tables.GetValueOrDefault(fields, new(delimiter, mark, fields, i, 0));
                tables[fields] = table with { Numbers = table.Numbers + numbers };
            }
        }

        var best = tables.Values.OrderByDescending(table => table.Numbers).FirstOrDefault();
        return best.Numbers == 0 ? best : best with { FirstLine = First(text, lines, best) };
    }

    /// <summary>A row of numbers with too many or too few fields above the table is bad data, not a heading.</summary>
    private static int First(ReadOnlySpan<byte> text, List<Range> lines, Table table)
    {
        var line = table.FirstLine;
        while (line > 0)
        {
            var (fields, numbers) = Numbers(text[lines[line - 1]], table.Delimiter, table.Mark);
            if (fields < 2 || numbers < fields)
            {
                break;
            }

            line--;
        }

        return line;
    }

    private static (int Fields, int Numbers) Numbers(
        ReadOnlySpan<byte> line,
        byte delimiter,
        byte mark
    )
    {
        var splitter = new FieldSplitter(line, delimiter);
        var (fields, numbers) = (0, 0);
        while (splitter.TryNext(out var field))
        {
            fields++;
            var bare = FieldSplitter.Bare(field);
            var form = NumberText.Read(bare, mark, out _);
            numbers +=
                form is NumberForm.Number or NumberForm.NotFinite
                || TimeStampText.TryRead(bare, out _, out var _)
                    ? 1
                    : 0;
        }

        return (fields, numbers);
    }

    private static LogDialect Describe(
        ReadOnlySpan<byte> text,
        List<Range> lines,
        Table table,
        bool hasMark
    )
    {
        var above = Above(text, lines, table, table.FirstLine);
        var header = Above(text, lines, table, above);
        var hasUnits = header >= 0 && HeaderRows.IsUnitRow(text[lines[above]], table.Delimiter);
        var first = text.IndexOf((byte)'\n');
        return new LogDialect
        {
            Delimiter = (char)table.Delimiter,
            DecimalMark = (char)table.Mark,
            HeaderLine = (hasUnits ? header : above) + 1,
            UnitLine = hasUnits ? above + 1 : 0,
            FirstDataLine = table.FirstLine + 1,
            HasByteOrderMark = hasMark,
            HasCarriageReturns = first > 0 && text[first - 1] == (byte)'\r',
        };
    }

    /// <summary>The nearest line above that has as many fields as the data, blank lines skipped; -1 when there is none.</summary>
    private static int Above(ReadOnlySpan<byte> text, List<Range> lines, Table table, int below)
    {
        var line = below - 1;
        while (line >= 0 && text[lines[line]].Trim(" \t"u8).IsEmpty)
        {
            line--;
        }

        return line >= 0 && FieldSplitter.Count(text[lines[line]], table.Delimiter) == table.Fields
            ? line
            : -1;
    }

    private readonly record struct Table(
        byte Delimiter,
        byte Mark,
        int Fields,
        int FirstLine,
        int Numbers
    );
}
