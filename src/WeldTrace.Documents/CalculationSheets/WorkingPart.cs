using WeldTrace.Documents.Layout;
using WeldTrace.Engineering;

namespace WeldTrace.Documents.CalculationSheets;

/// <summary>How a figure was worked out, on paper.</summary>
internal static class WorkingPart
{
    private static readonly TableColumn[] Columns =
    [
        new("Kind", 0.9),
        new("Symbol", 1),
        new("Quantity", 2.6),
        new("Value", 1.4, IsNumber: true),
    ];

    public static IEnumerable<Block> Of(Working working)
    {
        yield return new Heading(working.Title, 3);
        yield return new Paragraph(working.Formula, keepsWithNext: true);
        TableRow[] rows =
        [
            .. Rows("given", working.Inputs),
            .. Rows("on the way", working.Intermediates),
            .. Rows("result", working.Results),
        ];
        yield return new Table(Columns, rows);
        yield return new Paragraph($"Source: {working.Source}", Styles.Note);
        if (working.Validity.IsWithin)
        {
            yield return new Paragraph(working.Validity.Sentence, Styles.Note);
        }
        else
        {
            yield return new Notice(
                "Outside its range",
                [working.Validity.Sentence],
                MarkShape.Triangle
            );
        }
    }

    private static IEnumerable<TableRow> Rows(string role, IReadOnlyList<WorkingValue> values) =>
        values.Select(value => new TableRow([
            role,
            value.Symbol,
            new Cell(value.Name) { IsHead = true },
            value.Text,
        ]));
}
