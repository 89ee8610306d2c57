namespace WeldTrace.Documents.Layout;

/// <summary>A table's rows cut into lines for one width.</summary>
internal sealed class TableLayout
{
    private const double Gutter = 8;

    private readonly TableLook _look;

    public TableLayout(
        IReadOnlyList<TableColumn> columns,
        IReadOnlyList<TableRow> rows,
        TableLook look,
        double width
    )
    {
        _look = look;
        Width = width;
        Columns = Divide(columns, width);
        HasHead = columns.Any(column => column.Head.Length > 0);
        Head = HasHead ? [.. columns.Select((column, i) => HeadLines(column, i))] : [];
        Rows = [.. rows.Select(Lay)];
    }

    public double Width { get; }

    public bool HasHead { get; }

    /// <summary>Left edge and width of the text of each column.</summary>
    public IReadOnlyList<(double X, double Width)> Columns { get; }

    public IReadOnlyList<IReadOnlyList<string>> Head { get; }

    public IReadOnlyList<LaidRow> Rows { get; }

    public double Leading => _look.Text.Leading;

    public double HeadHeight =>
        HasHead ? (Head.Max(lines => lines.Count) * Styles.HeadCell.Leading) + 5 : 0;

    public double RowHeight(LaidRow row) => SliceHeight(row.LineCount) + NoteHeight(row);

    public double SliceHeight(int lines) => (lines * Leading) + (2 * _look.Padding);

    public static double NoteHeight(LaidRow row) =>
        row.NoteLines.Count == 0 ? 0 : (row.NoteLines.Count * Styles.Note.Leading) + 2;

    private static (double, double)[] Divide(IReadOnlyList<TableColumn> columns, double width)
    {
        var shares = columns.Sum(column => column.Share);
        var gutters = columns.Skip(1).Select((column, i) => GutterBetween(columns[i], column));
        var room = width - gutters.Sum();
        var x = 0.0;
        var places = new (double, double)[columns.Count];
        for (var i = 0; i < columns.Count; i++)
        {
            var own = room * columns[i].Share / shares;
            places[i] = (x, own);
            x += own + (i + 1 < columns.Count ? GutterBetween(columns[i], columns[i + 1]) : 0);
        }

        return places;
    }

    // A number that ends at the right and a text that begins at the left would stand too close.
    private static double GutterBetween(TableColumn left, TableColumn right) =>
        left.IsNumber && !right.IsNumber ? 2 * Gutter : Gutter;

    private IReadOnlyList<string> HeadLines(TableColumn column, int index) =>
        LineBreaker.Break(column.Head, Styles.HeadCell, Columns[index].Width);

    private LaidRow Lay(TableRow row)
    {
        var cells = new IReadOnlyList<string>[Columns.Count];
        for (var i = 0; i < cells.Length; i++)
        {
            cells[i] = i < row.Cells.Count ? CellLines(row.Cells[i], Columns[i].Width) : [];
        }

        var note = row.Note is null ? [] : LineBreaker.Break(row.Note, Styles.Note, Width);
        return new LaidRow(row, cells, note);
    }

    private IReadOnlyList<string> CellLines(Cell cell, double width)
    {
        var style = cell.Style ?? _look.Text;
        var room = cell.State is null ? width : width - StateText.Indent(style);
        return LineBreaker.Break(cell.Text, style, room);
    }
}

/// <summary>A row cut into lines.</summary>
internal sealed record LaidRow(
    TableRow Row,
    IReadOnlyList<IReadOnlyList<string>> Cells,
    IReadOnlyList<string> NoteLines
)
{
    public int LineCount { get; } = Math.Max(1, Cells.Max(lines => lines.Count));
}
