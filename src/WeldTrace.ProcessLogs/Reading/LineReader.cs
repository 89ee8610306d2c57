namespace WeldTrace.ProcessLogs.Reading;

/// <summary>Cuts the text into lines and hands them on until the text ends or too much is wrong.</summary>
internal sealed class LineReader(
    LogSource source,
    RowReader rows,
    List<LogProblem> problems,
    LogReadOptions options
)
{
    private long _line = source.Dialect.FirstDataLine;

    /// <summary>Whether the last line has an end.</summary>
    public bool EndsWithNewLine { get; private set; } = true;

    public async Task ReadAllAsync(CancellationToken cancellation)
    {
        while (problems.Count < options.ProblemLimit)
        {
            ReadWholeLines();
            if (source.IsOverLimit)
            {
                problems.Clear();
                problems.Add(Problem.TooLarge(options.LengthLimitBytes));
                return;
            }

            if (source.IsEnded)
            {
                ReadRest();
                return;
            }

            if (source.IsFull)
            {
                problems.Add(Problem.LineTooLong(_line));
                return;
            }

            cancellation.ThrowIfCancellationRequested();
            await source.FillAsync(cancellation);
        }
    }

    private void ReadWholeLines()
    {
        var text = source.Pending;
        var used = 0;
        while (problems.Count < options.ProblemLimit)
        {
            var length = text[used..].IndexOf((byte)'\n');
            if (length < 0)
            {
                break;
            }

            rows.Read(WithoutReturn(text.Slice(used, length)), _line++);
            used += length + 1;
        }

        source.Use(used);
    }

    private void ReadRest()
    {
        var rest = source.Pending;
        if (!rest.IsEmpty && problems.Count < options.ProblemLimit)
        {
            EndsWithNewLine = false;
            if (rest.Trim(" \t\r"u8).IsEmpty)
            {
                return;
            }

            rows.ReadUnended(WithoutReturn(rest), _line);
        }
    }

    private static ReadOnlySpan<byte> WithoutReturn(ReadOnlySpan<byte> line) =>
        line is [.., (byte)'\r'] ? line[..^1] : line;
}
