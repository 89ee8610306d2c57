namespace WeldTrace.Documents.Layout;

/// <summary>One label with its value, or with a state.</summary>
internal sealed record GridItem(string Label, string? Value)
{
    public StateMark? State { get; init; }

    public static GridItem Of(LabelledValue value) => new(value.Label, value.Value);

    public static GridItem Of(string label, StateMark state) =>
        new(label, state.Word) { State = state };
}

/// <summary>Labels and values in one or more pairs of columns, filled row by row.</summary>
internal static class Grid
{
    private const double LabelShare = 0.36;

    public static Table Of(
        IEnumerable<GridItem> items,
        int pairs = 2,
        bool struck = false,
        bool keepsWithNext = false
    )
    {
        var rows = items
            .Chunk(pairs)
            .Select(row => new TableRow([.. row.SelectMany(Cells)]) { Struck = struck });
        return new Table([.. Columns(pairs)], [.. rows], TableLook.Plain, keepsWithNext);
    }

    private static IEnumerable<TableColumn> Columns(int pairs)
    {
        for (var pair = 0; pair < pairs; pair++)
        {
            yield return new TableColumn(string.Empty, LabelShare);
            yield return new TableColumn(string.Empty, 1 - LabelShare);
        }
    }

    private static IEnumerable<Cell> Cells(GridItem item) =>
        [
            new Cell(item.Label) { Style = Styles.Label, IsHead = true },
            new Cell(item.Value) { State = item.State },
        ];
}
