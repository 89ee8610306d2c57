using WeldTrace.ProcessLogs.Reading;
using WeldTrace.ProcessLogs.Storage;

namespace WeldTrace.ProcessLogs;

/// <summary>
/// Reads a log once, from start to end, in memory that grows only with the compressed samples: checks,
/// hashes, converts and compresses in one pass.
/// </summary>
public static class ProcessLogReader
{
    /// <summary>Reads a whole log, or says why it cannot be taken. The stream is left open.</summary>
    public static async Task<LogReadResult> ReadAsync(
        Stream stream,
        LogMapping mapping,
        LogReadOptions? options = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(mapping);
        options ??= new LogReadOptions();
        if (mapping.Check() is { Count: > 0 } invalid)
        {
            return Refused(invalid, options);
        }

        try
        {
            var (source, problem) = await LogSource.OpenAsync(stream, options, cancellation);
            using (source)
            {
                return problem is null
                    ? await ReadAsync(source, mapping, options, cancellation)
                    : Refused([problem], options);
            }
        }
        catch (DamagedArchiveException)
        {
            return Refused([Problem.Damaged()], options);
        }
    }

    private static async Task<LogReadResult> ReadAsync(
        LogSource source,
        LogMapping mapping,
        LogReadOptions options,
        CancellationToken cancellation
    )
    {
        var columns = LogColumns.Read(source.Pending, source.Dialect);
        if (mapping.CompareWith(columns) is { Count: > 0 } differences)
        {
            return Refused(differences, options);
        }

        var fields = FieldPlan.Of(columns, mapping);
        var problems = new List<LogProblem>();
        var brought = source.Pending[..source.StartOfData].ToArray();
        source.Use(brought.Length);
        var preamble = LogAssembly.Preamble(fields, source.Dialect, brought);
        var time = fields.First(field => field.IsTime).Ordinal;
        var count = fields.Count(field => field.IsKept);
        using var check = new RenderCheck(source.Dialect, preamble, time, count);
        using var chunks = new ChunkWriter(count, check);
        var rows = new RowReader(source.Dialect, fields, chunks, problems) { Check = check };
        var lines = new LineReader(source, rows, problems, options);
        await lines.ReadAllAsync(cancellation);
        if (problems.Count == 0 && chunks.RowCount < options.MinimumRows)
        {
            problems.Add(Problem.TooFewRows(chunks.RowCount, options.MinimumRows));
        }

        if (problems.Count > 0)
        {
            return Refused(problems, options);
        }

        return new(LogAssembly.Complete(source, fields, preamble, rows, lines, chunks), []);
    }

    private static LogReadResult Refused(
        IReadOnlyList<LogProblem> problems,
        LogReadOptions options
    ) => new(null, [.. problems.Take(options.ProblemLimit)]);
}
