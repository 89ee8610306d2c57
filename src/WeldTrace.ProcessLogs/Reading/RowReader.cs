using WeldTrace.ProcessLogs.Storage;

namespace WeldTrace.ProcessLogs.Reading;

/// <summary>Turns lines into samples: plain rows at once, others field by field with an account of what is wrong.</summary>
internal sealed class RowReader(
    LogDialect dialect,
    FieldPlan[] fields,
    ChunkWriter chunks,
    List<LogProblem> problems
)
{
    private const int LongestQuoted = 32;

    // The samples don't hold a comment, so a file with comments among its rows is kept beside them.
    private const byte Comment = (byte)'#';

    private readonly byte _delimiter = (byte)dialect.Delimiter;
    private readonly byte _mark = (byte)dialect.DecimalMark;
    private readonly int _time = fields.First(field => field.IsTime).Ordinal;
    private double _lastTime = double.NegativeInfinity;
    private long _blankLine;

    /// <summary>Renders the rows again; it has to know the first time stamp.</summary>
    public required RenderCheck Check { get; init; }

    /// <summary>The first time stamp, when time is written as date and time of day.</summary>
    public LogStart? Start
    {
        get;
        private set => Check.Start = field = value;
    }

    /// <summary>Time stamps as logged, of the first and the last row.</summary>
    public (double First, double Last) Times { get; private set; }

    /// <summary>Reads one line, without its end.</summary>
    /// <param name="line">The line.</param>
    /// <param name="number">Its number in the file, from 1.</param>
    public void Read(ReadOnlySpan<byte> line, long number)
    {
        if (line.IsEmpty || line.Trim(" \t"u8).IsEmpty)
        {
            _blankLine = _blankLine == 0 ? number : _blankLine;
            return;
        }

        if (line[0] == Comment && _delimiter != Comment)
        {
            return;
        }

        if (_blankLine > 0)
        {
            problems.Add(Problem.FieldCount(_blankLine, 0, fields.Length));
            _blankLine = 0;
        }

        if (TryReadPlain(line) || TryReadSlowly(line, number))
        {
            EndRow(number);
        }
    }

    /// <summary>Reads the last line when it has no end; it may have been cut off.</summary>
    public void ReadUnended(ReadOnlySpan<byte> line, long number)
    {
        var found = FieldSplitter.Count(line, _delimiter);
        if (found < fields.Length || IsCutShort(line, found))
        {
            problems.Add(
                Problem.Truncated(
                    number,
                    fields[Math.Min(found, fields.Length) - 1].Name,
                    found,
                    fields.Length
                )
            );
            return;
        }

        Read(line, number);
    }

    private bool TryReadPlain(ReadOnlySpan<byte> line)
    {
        var columns = chunks.Columns;
        var (row, at) = (chunks.Row, 0);
        for (var f = 0; f < fields.Length; f++)
        {
            var ordinal = fields[f].Ordinal;
            long mantissa = 0;
            var (isNegative, decimals) = (false, 0);
            if (
                ordinal < 0 ? !TrySkip(line, ref at)
                : fields[f].IsTimeStamp
                    ? !TryReadStamp(line, ref at, out isNegative, out mantissa, out decimals)
                : !PlainNumber.TryRead(
                    line,
                    _mark,
                    ref at,
                    out isNegative,
                    out mantissa,
                    out decimals
                )
            )
            {
                return false;
            }

            var isLast = f == fields.Length - 1;
            if (isLast ? at != line.Length : at == line.Length || line[at] != _delimiter)
            {
                return false;
            }

            at++;
            if (ordinal >= 0)
            {
                columns[ordinal].Set(row, isNegative, mantissa, decimals);
            }
        }

        return true;
    }

    private bool TryReadStamp(
        ReadOnlySpan<byte> line,
        ref int at,
        out bool isNegative,
        out long mantissa,
        out int decimals
    )
    {
        (isNegative, mantissa, decimals) = (false, 0, 0);
        var rest = line[Math.Min(at, line.Length)..];
        var length = rest.IndexOf(_delimiter);
        var field = length < 0 ? rest : rest[..length];
        if (!TimeStampText.TryRead(field, out var nanoseconds, out var form))
        {
            return false;
        }

        at += field.Length;
        Start ??= new LogStart(nanoseconds, form);
        decimals = form.Decimals;
        var since = nanoseconds - Start.Nanoseconds;
        isNegative = since < 0;
        mantissa = Math.Abs(since) / PowersOfTen.AsInteger(TimeStampText.MostDecimals - decimals);
        return mantissa < PowersOfTen.AsDouble(PowersOfTen.MostDigits);
    }

    private bool TrySkip(ReadOnlySpan<byte> line, ref int at)
    {
        var rest = line[Math.Min(at, line.Length)..];
        var length = rest.IndexOf(_delimiter);
        var field = length < 0 ? rest : rest[..length];
        at += field.Length;
        return !field.Contains((byte)'"');
    }

    private bool TryReadSlowly(ReadOnlySpan<byte> line, long number)
    {
        var count = FieldSplitter.Count(line, _delimiter);
        if (count != fields.Length)
        {
            problems.Add(
                count > fields.Length && _delimiter == ',' && _mark == '.'
                    ? Problem.Mixed(number, null, LogText.Of(line), '.')
                    : Problem.FieldCount(number, count, fields.Length)
            );
            return false;
        }

        var splitter = new FieldSplitter(line, _delimiter);
        var isGood = true;
        foreach (var field in fields)
        {
            splitter.TryNext(out var text);
            isGood &= !field.IsKept || TryReadField(field, FieldSplitter.Bare(text), number);
        }

        return isGood;
    }

    private bool TryReadField(FieldPlan field, ReadOnlySpan<byte> text, long number)
    {
        var column = chunks.Columns[field.Ordinal];
        var at = 0;
        if (field.IsTimeStamp)
        {
            return TryReadStampField(field, text, number);
        }

        if (
            PlainNumber.TryRead(
                text,
                _mark,
                ref at,
                out var isNegative,
                out var mantissa,
                out var decimals
            )
            && at == text.Length
        )
        {
            column.Set(chunks.Row, isNegative, mantissa, decimals);
            return true;
        }

        var form = NumberText.Read(text, _mark, out var value);
        if (form == NumberForm.Number)
        {
            column.Set(chunks.Row, value);
            return true;
        }

        var shown = LogText.Of(text[..Math.Min(text.Length, LongestQuoted)]);
        var name = LogText.Of(field.Name);
        problems.Add(
            form == NumberForm.OtherDecimalMark
                ? Problem.Mixed(number, name, shown, (char)_mark)
                : Problem.OfNumber(form, number, name, shown)
        );
        return false;
    }

    private bool TryReadStampField(FieldPlan field, ReadOnlySpan<byte> text, long number)
    {
        var at = 0;
        if (TryReadStamp(text, ref at, out var isNegative, out var mantissa, out var decimals))
        {
            chunks.Columns[field.Ordinal].Set(chunks.Row, isNegative, mantissa, decimals);
            return true;
        }

        var shown = LogText.Of(text[..Math.Min(text.Length, LongestQuoted)]);
        problems.Add(Problem.NoTimeStamp(number, LogText.Of(field.Name), shown));
        return false;
    }

    private void EndRow(long number)
    {
        var time = chunks.Columns[_time].ValueAt(chunks.Row);
        if (time <= _lastTime)
        {
            var name = fields.First(field => field.IsTime).Name;
            problems.Add(Problem.Time(number, LogText.Of(name), time, _lastTime));
        }

        Times = (chunks.RowCount == 0 ? time : Times.First, time);
        _lastTime = time;
        chunks.EndRow();
    }

    /// <summary>Whether the last number has fewer decimals than its column, and so lost its end.</summary>
    private bool IsCutShort(ReadOnlySpan<byte> line, int found)
    {
        if (found != fields.Length || !fields[^1].IsKept || chunks.RowCount == 0)
        {
            return false;
        }

        var last = FieldSplitter.Bare(line[(line.LastIndexOf(_delimiter) + 1)..]);
        var column = chunks.Columns[fields[^1].Ordinal];
        var at = 0;
        PlainNumber.TryRead(last, _mark, ref at, out _, out _, out var decimals);
        return NumberText.Read(last, _mark, out _) != NumberForm.Number
            || (column.IsUniform && decimals < column.Decimals);
    }
}
