using System.Text;
using WeldTrace.ProcessLogs.Storage;

namespace WeldTrace.ProcessLogs.Reading;

/// <summary>Puts a log together after its last row.</summary>
internal static class LogAssembly
{
    public static ProcessLog Complete(
        LogSource source,
        FieldPlan[] fields,
        byte[] preamble,
        RowReader rows,
        LineReader lines,
        ChunkWriter chunks
    )
    {
        var pyramid = chunks.Complete();
        var dialect = source.Dialect with { EndsWithNewLine = lines.EndsWithNewLine };
        var columns = Columns(fields, chunks);
        var time = columns.First(column => column.Channel == LogChannel.Time);
        var header = new LogHeader
        {
            Columns = columns,
            Dialect = IsWhole(fields)
                ? dialect
                : dialect with
                {
                    HeaderLine = 1,
                    UnitLine = 0,
                    FirstDataLine = 2,
                },
            Preamble = preamble,
            SampleCount = chunks.RowCount,
            StartSeconds = time.ToSi(rows.Times.First),
            DurationSeconds = time.ToSi(rows.Times.Last) - time.ToSi(rows.Times.First),
            Start = rows.Start,
            OriginalSha256 = source.Sha256(),
            OriginalLengthBytes = source.BytesRead,
            CsvSha256 = chunks.RenderedSha256(lines.EndsWithNewLine) ?? "",
        };
        var log = new ProcessLog(header, chunks.Chunks, pyramid);
        return header.CsvSha256.Length > 0
            ? log
            : log with
            {
                Header = header with { CsvSha256 = ProcessLogExport.WriteCsv(log, Stream.Null) },
            };
    }

    /// <summary>The lines before the rows: as brought, or a heading of the kept columns alone.</summary>
    public static byte[] Preamble(FieldPlan[] fields, LogDialect dialect, byte[] brought) =>
        IsWhole(fields) ? brought : HeaderOf(fields.Where(field => field.IsKept), dialect);

    private static bool IsWhole(FieldPlan[] fields) => fields.All(field => field.IsKept);

    private static LogColumn[] Columns(FieldPlan[] fields, ChunkWriter chunks)
    {
        var columns = new List<LogColumn>();
        foreach (var field in fields.Where(field => field.IsKept))
        {
            var buffer = chunks.Columns[field.Ordinal];
            var (channel, unit, factor) = (
                field.Mapping.Channel,
                field.Mapping.Unit,
                field.Mapping.Factor
            );
            columns.Add(
                new(
                    field.Ordinal,
                    field.Name,
                    channel,
                    unit,
                    factor,
                    buffer.Style.Decimals,
                    buffer.IsFixedDecimal,
                    buffer.Style.IsUniform
                )
            );
        }

        return [.. columns];
    }

    /// <summary>A heading for the kept columns alone.</summary>
    private static byte[] HeaderOf(IEnumerable<FieldPlan> columns, LogDialect dialect)
    {
        var names = columns.Select(column => $"\"{column.Name.Replace('"', '\'')}\"");
        var mark = dialect.HasByteOrderMark ? "\uFEFF" : "";
        var end = dialect.HasCarriageReturns ? "\r\n" : "\n";
        return Encoding.UTF8.GetBytes(mark + string.Join(dialect.Delimiter, names) + end);
    }
}
