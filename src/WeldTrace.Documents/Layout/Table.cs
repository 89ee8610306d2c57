using PdfSharp.UniversalAccessibility;

namespace WeldTrace.Documents.Layout;

/// <summary>
/// A table; its heading row stands again on each page, a row is divided only when it is taller than a page.
/// </summary>
internal sealed class Table(
    IReadOnlyList<TableColumn> columns,
    IReadOnlyList<TableRow> rows,
    TableLook? look = null,
    bool keepsWithNext = false
) : Block
{
    private readonly TableLook _look = look ?? TableLook.Ruled;
    private TableLayout? _layout;

    public override double SpaceAfter => 8;

    public override bool KeepsWithNext => keepsWithNext;

    public override double Height(double width)
    {
        var layout = Lay(width);
        return layout.HeadHeight + layout.Rows.Sum(layout.RowHeight);
    }

    public override double StartHeight(double width)
    {
        var layout = Lay(width);
        var whole = Height(width);
        if (whole <= PageGeometry.TextHeight / 4)
        {
            return whole;
        }

        return layout.HeadHeight + layout.Rows.Take(2).Sum(layout.RowHeight);
    }

    public override void Draw(Canvas canvas, Area area)
    {
        var layout = Lay(area.Width);
        var y = area.Y + layout.HeadHeight;
        canvas.Open(PdfBlockLevelElementTag.Table);
        DrawHead(canvas, layout, area with { Height = layout.HeadHeight });
        foreach (var row in layout.Rows)
        {
            var height = layout.RowHeight(row);
            DrawSlice(canvas, layout, new RowSlice(row), area with { Y = y, Height = height });
            y += height;
        }

        canvas.Close();
    }

    public override void Place(Flow flow)
    {
        var layout = Lay(Flow.Width);
        flow.Require(Math.Min(StartHeight(Flow.Width), PageGeometry.TextHeight));
        flow.Paint(canvas => canvas.Open(PdfBlockLevelElementTag.Table));
        PlaceHead(flow, layout, isRepeated: false);
        foreach (var row in layout.Rows)
        {
            PlaceRow(flow, layout, row);
        }

        flow.Paint(canvas => canvas.Close());
    }

    private void PlaceHead(Flow flow, TableLayout layout, bool isRepeated)
    {
        if (!layout.HasHead)
        {
            return;
        }

        var area = flow.Take(layout.HeadHeight);
        flow.Paint(canvas =>
        {
            if (isRepeated)
            {
                canvas.Decoration(() => Painter(canvas, layout).HeadText(area));
                TablePainter.HeadRule(canvas, area);
            }
            else
            {
                DrawHead(canvas, layout, area);
            }
        });
    }

    private void PlaceRow(Flow flow, TableLayout layout, LaidRow row)
    {
        var height = layout.RowHeight(row);
        var roomOnNewPage = PageGeometry.TextHeight - layout.HeadHeight;
        if (!flow.Fits(height) && height <= roomOnNewPage)
        {
            BeginPage(flow, layout);
        }

        if (flow.Fits(height))
        {
            var area = flow.Take(height);
            flow.Paint(canvas => DrawSlice(canvas, layout, new RowSlice(row), area));
        }
        else
        {
            PlaceDivided(flow, layout, row);
        }
    }

    private void PlaceDivided(Flow flow, TableLayout layout, LaidRow row)
    {
        for (var first = 0; first < row.LineCount; )
        {
            var room = flow.Remaining - (2 * _look.Padding) - TableLayout.NoteHeight(row);
            var fitting = (int)(room / layout.Leading);
            if (fitting < 1)
            {
                BeginPage(flow, layout);
                continue;
            }

            var count = Math.Min(fitting, row.LineCount - first);
            var slice = new RowSlice(row, first, count);
            var area = flow.Take(
                layout.SliceHeight(count) + (slice.IsLast ? TableLayout.NoteHeight(row) : 0)
            );
            flow.Paint(canvas => DrawSlice(canvas, layout, slice, area));
            first += count;
        }
    }

    private void BeginPage(Flow flow, TableLayout layout)
    {
        flow.BeginPage();
        PlaceHead(flow, layout, isRepeated: true);
    }

    private void DrawHead(Canvas canvas, TableLayout layout, Area area)
    {
        if (layout.HasHead)
        {
            Painter(canvas, layout).TaggedHead(area);
            TablePainter.HeadRule(canvas, area);
        }
    }

    private void DrawSlice(Canvas canvas, TableLayout layout, RowSlice slice, Area area) =>
        Painter(canvas, layout).Row(slice, area);

    private TablePainter Painter(Canvas canvas, TableLayout layout) =>
        new(canvas, layout, _look, columns);

    private TableLayout Lay(double width)
    {
        if (_layout is null || Math.Abs(_layout.Width - width) > 0.001)
        {
            _layout = new TableLayout(columns, rows, _look, width);
        }

        return _layout;
    }
}

/// <summary>The lines of a row that stand on one page.</summary>
internal sealed record RowSlice(LaidRow Laid, int First, int Count)
{
    public RowSlice(LaidRow laid)
        : this(laid, 0, laid.LineCount) { }

    public bool IsLast => First + Count >= Laid.LineCount;
}
