using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.CalculationSheets;

/// <summary>The order of a calculation sheet's parts.</summary>
internal static class CalculationSheetDocument
{
    /// <summary>A longer address, such as one that holds a list of tools, is of no use on paper.</summary>
    private const int LongestAddress = 900;

    private const string NoRecord =
        "A calculation, not a record: nothing on this sheet was measured, approved or signed by being printed.";

    public static IReadOnlyList<Block> Blocks(CalculationSheetModel model)
    {
        var calculation = model.Calculation;
        return
        [
            .. Head(model),
            .. Part.Of("Entered", Values(calculation.Entered)),
            .. Part.Of("Result", Results(calculation)),
            .. Drawings(calculation, model.Stamp.Units),
            .. calculation.Tables.SelectMany(TableOf),
            .. Part.Of("How this was worked out", calculation.Workings.SelectMany(WorkingPart.Of)),
        ];
    }

    private static IEnumerable<Block> Head(CalculationSheetModel model)
    {
        Block[] left =
        [
            new Paragraph(model.Stamp.SiteName, Styles.Site),
            new Heading($"Calculation sheet: {model.Calculation.Title}", 1),
            new Paragraph(NoRecord),
        ];
        if (model.Address.Length <= LongestAddress)
        {
            yield return new SideBySide(new Stack(left), RecordLink.Of(model.Address), 0.7);
        }
        else
        {
            yield return new Stack(left);
        }

        if (model.Calculation.Cautions.Count > 0)
        {
            yield return new Notice("Caution", model.Calculation.Cautions, MarkShape.Triangle);
        }
    }

    private static IEnumerable<Block> Values(IReadOnlyList<LabelledValue> values) =>
        values.Count == 0 ? [] : [Grid.Of(values.Select(GridItem.Of), pairs: 1)];

    private static IEnumerable<Block> Results(Calculation calculation) =>
        [
            .. Values(calculation.Figures),
            .. calculation.Statements.Select(sentence => new Paragraph(sentence)),
        ];

    private static IEnumerable<Block> Drawings(Calculation calculation, UnitSystem units)
    {
        if (calculation.Passes is { } passes)
        {
            yield return new Heading("Plan, seen from the shoulder side", 3);
            yield return new Figure(new PassDrawing(passes), widest: 300);
        }

        if (calculation.Ladder is { } ladder)
        {
            yield return new Heading("Stages over time", 3);
            yield return new Figure(new PressureLadderDrawing(ladder, units));
        }

        if (calculation.Plot is { } plot)
        {
            yield return new Heading(plot.Title, 3);
            yield return new Figure(new XyPlotDrawing(plot.Plot), plot.Key);
        }
    }

    private static IEnumerable<Block> TableOf(CalculationTable table)
    {
        yield return new Heading(table.Title, 3);
        var columns = table.Heads.Select(
            (head, i) => new TableColumn(head, i == 0 ? 1.6 : 1, IsNumber: i > 0)
        );
        var rows = table.Rows.Select(row => new TableRow([
            .. row.Select((text, i) => new Cell(text) { IsHead = i == 0 }),
        ]));
        yield return new Table([.. columns], [.. rows]);
    }
}
