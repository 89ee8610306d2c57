using PdfSharp.UniversalAccessibility;

namespace WeldTrace.Documents.Layout;

/// <summary>Draws the rows of a laid table.</summary>
internal sealed class TablePainter(
    Canvas canvas,
    TableLayout layout,
    TableLook look,
    IReadOnlyList<TableColumn> columns
)
{
    public static void HeadRule(Canvas canvas, Area area) =>
        canvas.Decoration(() =>
            canvas.Rule(area.X, area.Bottom - 1, area.Right, area.Bottom - 1, 0.7, Tone.Ink)
        );

    public void TaggedHead(Area area) =>
        canvas.Tagged(
            PdfBlockLevelElementTag.TableRow,
            () =>
            {
                for (var i = 0; i < columns.Count; i++)
                {
                    var column = i;
                    canvas.Tagged(
                        PdfBlockLevelElementTag.TableHeaderCell,
                        () => HeadCell(column, area)
                    );
                }
            }
        );

    public void HeadText(Area area)
    {
        for (var i = 0; i < columns.Count; i++)
        {
            HeadCell(i, area);
        }
    }

    public void Row(RowSlice slice, Area area)
    {
        canvas.Tagged(PdfBlockLevelElementTag.TableRow, () => Cells(slice, area));
        if (slice.IsLast && slice.Laid.NoteLines.Count > 0)
        {
            Note(slice, area);
        }

        if (look.HasRules)
        {
            canvas.Decoration(() =>
                canvas.Rule(area.X, area.Bottom, area.Right, area.Bottom, 0.35, Tone.Rule)
            );
        }
    }

    private void HeadCell(int index, Area area)
    {
        var lines = layout.Head[index];
        var y = area.Bottom - 3 - (lines.Count * Styles.HeadCell.Leading);
        foreach (var line in lines)
        {
            Aligned(line, Styles.HeadCell, index, area.X, y);
            y += Styles.HeadCell.Leading;
        }
    }

    private void Cells(RowSlice slice, Area area)
    {
        for (var i = 0; i < columns.Count; i++)
        {
            var cell = i < slice.Laid.Row.Cells.Count ? slice.Laid.Row.Cells[i] : null;
            var column = i;
            if (cell is not null)
            {
                canvas.Tagged(Tag(cell), () => DrawCell(cell, column, slice, area));
            }
        }
    }

    private void DrawCell(Cell cell, int column, RowSlice slice, Area area)
    {
        var style = (cell.Style ?? look.Text) with { Leading = layout.Leading };
        var x = area.X + layout.Columns[column].X;
        var y = area.Y + look.Padding + (look.Text.Baseline - style.Baseline);
        var lines = slice.Laid.Cells[column].Skip(slice.First).Take(slice.Count).ToArray();
        if (cell.State is not null)
        {
            if (slice.First == 0)
            {
                StateText.DrawShape(canvas, cell.State.Shape, style, x, y);
            }

            TextLines.Draw(
                canvas,
                lines,
                style,
                x + StateText.Indent(style),
                y,
                slice.Laid.Row.Struck
            );
            return;
        }

        foreach (var line in lines)
        {
            var left = columns[column].IsNumber
                ? x + layout.Columns[column].Width - style.Width(line)
                : x;
            TextLines.Draw(canvas, [line], style, left, y, slice.Laid.Row.Struck);
            y += style.Leading;
        }
    }

    private void Note(RowSlice slice, Area area)
    {
        var y = area.Bottom - TableLayout.NoteHeight(slice.Laid);
        canvas.Tagged(
            PdfBlockLevelElementTag.TableRow,
            () =>
                canvas.Tagged(
                    PdfBlockLevelElementTag.TableDataCell,
                    () =>
                    {
                        canvas.SpanColumns(columns.Count);
                        TextLines.Draw(
                            canvas,
                            slice.Laid.NoteLines,
                            Styles.Note,
                            area.X,
                            y,
                            struck: false
                        );
                    }
                )
        );
    }

    private void Aligned(string line, TextStyle style, int index, double left, double y)
    {
        var x = left + layout.Columns[index].X;
        if (columns[index].IsNumber)
        {
            canvas.TextRight(line, style, x + layout.Columns[index].Width, y);
        }
        else
        {
            canvas.Text(line, style, x, y);
        }
    }

    private static PdfBlockLevelElementTag Tag(Cell cell) =>
        cell.IsHead
            ? PdfBlockLevelElementTag.TableHeaderCell
            : PdfBlockLevelElementTag.TableDataCell;
}
