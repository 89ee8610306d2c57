using System.Globalization;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Limits;

/// <summary>A row whose cells were checked when the table was entered.</summary>
internal readonly record struct LimitRow(IReadOnlyList<string> Cells)
{
    public static IEnumerable<LimitRow> Of(LimitTable table, LimitKind kind)
    {
        ArgumentNullException.ThrowIfNull(table);
        return table.Covers == kind
            ? table.Text.Rows.Select(r => new LimitRow(r))
            : throw new ArgumentException(
                $"{table.Label} holds {LimitWords.Of(table.Covers)}, not {LimitWords.Of(kind)}.",
                nameof(table)
            );
    }

    public decimal? Number(int column) =>
        Cells[column].Length == 0
            ? null
            : decimal.Parse(Cells[column], CultureInfo.InvariantCulture);

    /// <summary>Whether the cell says any, or has the word among those divided by commas.</summary>
    public bool Fits(int column, string? word) =>
        Words(column)
            .Any(w => w == LimitSchema.Any || w.Equals(word, StringComparison.OrdinalIgnoreCase));

    /// <summary>Whether the cell names the group or one above it: 22 fits 22.1.</summary>
    public bool FitsGroup(int column, string? group) =>
        Words(column)
            .Any(w =>
                w == LimitSchema.Any
                || w == group
                || (group?.StartsWith(w + ".", StringComparison.Ordinal) ?? false)
            );

    /// <summary>Whether a thickness lies from the first column's bound to below the second's.</summary>
    public bool FitsThickness(int from, int below, Length thickness)
    {
        var millimetres = (decimal)thickness.Millimetres;
        return millimetres >= (Number(from) ?? 0)
            && (Number(below) is not { } end || millimetres < end);
    }

    private string[] Words(int column) =>
        Cells[column]
            .Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}
