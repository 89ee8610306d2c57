using System.Globalization;
using System.Text;

namespace WeldTrace.Web.Reading;

/// <summary>Lists as CSV (RFC 4180), with cells that a spreadsheet can't take for formulas.</summary>
public static class CsvText
{
    private const string MediaType = "text/csv; charset=utf-8";
    private const string FormulaStarts = "=+-@\t\r";

    /// <summary>A file to download.</summary>
    public static IResult File(
        string name,
        IReadOnlyList<string> heads,
        IEnumerable<IReadOnlyList<string?>> rows
    ) => Results.File(Bytes(heads, rows), MediaType, name);

    /// <summary>A whole file, in UTF-8 with its mark.</summary>
    public static byte[] Bytes(
        IReadOnlyList<string> heads,
        IEnumerable<IReadOnlyList<string?>> rows
    )
    {
        ArgumentNullException.ThrowIfNull(rows);
        var text = new StringBuilder();
        foreach (var row in rows.Prepend(heads))
        {
            text.Append(Line(row));
        }

        return [.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(text.ToString())];
    }

    /// <summary>A file that is too long to be held: each row is written as it is read.</summary>
    public static IResult LongFile(
        string name,
        IReadOnlyList<string> heads,
        IAsyncEnumerable<IReadOnlyList<string?>> rows
    ) =>
        Results.Stream(
            async stream =>
            {
                await using var writer = new StreamWriter(stream, new UTF8Encoding(true));
                await writer.WriteAsync(Line(heads));
                await foreach (var row in rows)
                {
                    await writer.WriteAsync(Line(row));
                }
            },
            MediaType,
            name
        );

    /// <summary>An instant as UTC, to the second (ISO 8601).</summary>
    public static string Instant(DateTimeOffset at) =>
        at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);

    private static string Line(IReadOnlyList<string?> row) =>
        string.Join(',', row.Select(Cell)) + "\r\n";

    private static string Cell(string? value)
    {
        var cell = value ?? "";
        var isNumber = double.TryParse(cell, CultureInfo.InvariantCulture, out _);
        if (
            cell.Length > 0
            && FormulaStarts.Contains(cell[0], StringComparison.Ordinal)
            && !isNumber
        )
        {
            cell = "'" + cell;
        }

        return cell.AsSpan().IndexOfAny("\",\r\n") >= 0
            ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : cell;
    }
}
