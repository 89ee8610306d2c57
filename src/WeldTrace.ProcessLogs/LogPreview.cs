using WeldTrace.ProcessLogs.Reading;

namespace WeldTrace.ProcessLogs;

/// <summary>One column of a file that was not read yet.</summary>
/// <param name="Header">The header field as it stands; the key of a mapping.</param>
/// <param name="Name">Its name without the unit.</param>
/// <param name="Unit">The unit as written; empty when there is none.</param>
/// <param name="UnitIsBelow">Whether the unit stands in a row of its own below the name.</param>
/// <param name="IsNumeric">Whether every previewed field is a number.</param>
/// <param name="IsTimeStamp">Whether every previewed field is a date with a time of day.</param>
public sealed record PreviewColumn(
    string Header,
    string Name,
    string Unit,
    bool UnitIsBelow,
    bool IsNumeric,
    bool IsTimeStamp = false
);

/// <summary>The start of a log, to be shown before anything is kept.</summary>
public sealed record LogPreview
{
    private const int RowsShown = 20;

    public required LogDialect Dialect { get; init; }

    public required IReadOnlyList<PreviewColumn> Columns { get; init; }

    /// <summary>The first rows, as written.</summary>
    public required IReadOnlyList<IReadOnlyList<string>> Rows { get; init; }

    /// <summary>What the columns seem to mean.</summary>
    public required LogMapping Guess { get; init; }

    /// <summary>Samples per second over the first rows; none when no column seems to be the time.</summary>
    public required double? SamplesPerSecond { get; init; }

    /// <summary>Reads the first 256 kB of a log; the stream is left open where it stands.</summary>
    public static async Task<LogPreviewResult> ReadAsync(
        Stream stream,
        LogReadOptions? options = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(stream);
        try
        {
            var (source, problem) = await LogSource.OpenAsync(
                stream,
                options ?? new(),
                cancellation
            );
            using (source)
            {
                return problem is null ? new(From(source), []) : new(null, [problem]);
            }
        }
        catch (DamagedArchiveException)
        {
            return new(null, [Problem.Damaged()]);
        }
    }

    private static LogPreview From(LogSource source)
    {
        var columns = LogColumns.Read(source.Pending, source.Dialect);
        var rows = Take(source);
        var numeric = columns.Select(
            (column, i) =>
                column with
                {
                    IsNumeric = AllNumbers(rows, i, source.Dialect),
                    IsTimeStamp =
                        rows.Count > 0
                        && rows.All(row => i < row.Count && Stamp(row[i]) is not null),
                }
        );
        PreviewColumn[] judged = [.. numeric];
        var guess = new LogMapping(ChannelGuess.Guess(judged));
        return new LogPreview
        {
            Dialect = source.Dialect,
            Columns = judged,
            Rows = rows,
            Guess = guess,
            SamplesPerSecond = RateOf(rows, guess, source.Dialect),
        };
    }

    private static List<IReadOnlyList<string>> Take(LogSource source)
    {
        var rows = new List<IReadOnlyList<string>>();
        for (var i = 0; i < RowsShown; i++)
        {
            var line = TextLines.Get(source.Pending, source.Dialect.FirstDataLine + i);
            if (!line.IsEmpty)
            {
                rows.Add([
                    .. HeaderRows.Fields(line, (byte)source.Dialect.Delimiter).Select(LogText.Of),
                ]);
            }
        }

        return rows;
    }

    private static bool AllNumbers(
        List<IReadOnlyList<string>> rows,
        int column,
        LogDialect dialect
    ) => rows.All(row => column >= row.Count || Number(row[column], dialect) is not null);

    private static double? Number(string text, LogDialect dialect) =>
        NumberText.Read(
            System.Text.Encoding.UTF8.GetBytes(text),
            (byte)dialect.DecimalMark,
            out var value
        ) is NumberForm.Number
            ? value
            : null;

    private static long? Stamp(string text) =>
        TimeStampText.TryRead(System.Text.Encoding.UTF8.GetBytes(text), out var nanoseconds, out _)
            ? nanoseconds
            : null;

    private static double? Between(
        string first,
        string last,
        ColumnMapping time,
        LogDialect dialect
    ) =>
        time.Unit == LogUnits.TimeStamp
            ? (Stamp(last) - Stamp(first)) / 1e9
            : (Number(last, dialect) - Number(first, dialect)) * LogUnits.Find(time.Unit)?.Factor;

    private static double? RateOf(
        List<IReadOnlyList<string>> rows,
        LogMapping guess,
        LogDialect dialect
    )
    {
        var time = guess.Columns.ToList().FindIndex(column => column.Channel == LogChannel.Time);
        if (time < 0 || rows.Count < 2 || rows[0].Count <= time || rows[^1].Count <= time)
        {
            return null;
        }

        var seconds = Between(rows[0][time], rows[^1][time], guess.Columns[time], dialect);
        return seconds > 0 ? (rows.Count - 1) / seconds : null;
    }
}

/// <summary>Either a preview, or the reasons why there is none.</summary>
public sealed record LogPreviewResult(LogPreview? Preview, IReadOnlyList<LogProblem> Problems);
