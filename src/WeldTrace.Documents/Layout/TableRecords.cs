namespace WeldTrace.Documents.Layout;

/// <summary>A column takes its share of the table's width.</summary>
internal sealed record TableColumn(string Head, double Share, bool IsNumber = false);

/// <summary>What stands in one field of a table: text, or a state, or both.</summary>
internal sealed record Cell(string? Text)
{
    public StateMark? State { get; init; }

    public TextStyle? Style { get; init; }

    /// <summary>Whether the cell names its row.</summary>
    public bool IsHead { get; init; }

    public static implicit operator Cell(string? text) => new(text);

    public static Cell Of(StateMark? state) => new(state?.Word) { State = state };
}

/// <summary>One row; it is struck through when it was corrected, and the note below it says why.</summary>
internal sealed record TableRow(IReadOnlyList<Cell> Cells)
{
    public bool Struck { get; init; }

    public string? Note { get; init; }
}

/// <summary>How a table is drawn.</summary>
internal sealed record TableLook(TextStyle Text, double Padding, bool HasRules)
{
    public static readonly TableLook Ruled = new(Styles.Cell, 2.2, HasRules: true);
    public static readonly TableLook Plain = new(Styles.Body, 0.6, HasRules: false);
}
