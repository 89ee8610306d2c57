using System.Text;

namespace WeldTrace.Web.Reading;

/// <summary>Lists as CSV (RFC 4180), with cells that a spreadsheet can't take for formulas.</summary>
public static class CsvText
{
    private const string FormulaStarts = "=+-@\t\r";

    /// <summary>A file to download.</summary>
    public static IResult File(
        string name,
        IReadOnlyList<string> heads,
        IEnumerable<IReadOnlyList<string?>> rows
    )
    {
        var text = new StringBuilder();
        foreach (var row in rows.Prepend(heads))
        {
            text.AppendJoin(',', row.Select(Cell)).Append("\r\n");
        }

        return Results.File(
            Encoding.UTF8.GetPreamble().Concat(Encoding.UTF8.GetBytes(text.ToString())).ToArray(),
            "text/csv; charset=utf-8",
            name
        );
    }

    private static string Cell(string? value)
    {
        var cell = value ?? "";
        var isNumber = double.TryParse(
            cell,
            System.Globalization.CultureInfo.InvariantCulture,
            out _
        );
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
