using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Limits;

internal static class LimitChecks
{
    public static void Check(Checks checks, LimitKind kind, LimitText text)
    {
        checks
            .Text(text.Title, LimitTable.LongestText, "Give the title", nameof(text.Title))
            .Text(
                text.Source.Document,
                LimitTable.LongestText,
                "Name the document that the limits stand in",
                nameof(text.Source.Document)
            )
            .Text(
                text.Source.Edition,
                LimitTable.LongestText,
                "Give the edition of the document",
                nameof(text.Source.Edition)
            )
            .Text(
                text.Source.Clause,
                LimitTable.LongestText,
                "Give the clause or table",
                nameof(text.Source.Clause)
            )
            .That(
                text.Rows.Count is > 0 and <= LimitTable.MostRows,
                "rows",
                $"Give 1 to {LimitTable.MostRows} rows.",
                nameof(text.Rows)
            );
        for (var row = 0; row < text.Rows.Count; row++)
        {
            CheckRow(checks, LimitSchema.Of(kind), text.Rows[row], row);
        }
    }

    private static void CheckRow(
        Checks checks,
        IReadOnlyList<LimitColumn> columns,
        IReadOnlyList<string> cells,
        int row
    )
    {
        if (cells.Count != columns.Count)
        {
            checks.That(
                false,
                "row",
                $"Row {row + 1} has {cells.Count} cells, the table {columns.Count} columns.",
                nameof(LimitText.Rows)
            );
            return;
        }

        for (var column = 0; column < columns.Count; column++)
        {
            if (columns[column].Against(cells[column]) is { } against)
            {
                checks.That(
                    false,
                    "cell",
                    $"Row {row + 1}, {columns[column].Name}: {against}.",
                    FormattableString.Invariant($"Rows[{row}].Cells[{column}]")
                );
            }
        }
    }
}
