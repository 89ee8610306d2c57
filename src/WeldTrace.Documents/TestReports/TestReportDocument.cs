using WeldTrace.Documents.CalculationSheets;
using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Layout;
using WeldTrace.Documents.Procedures;
using WeldTrace.Documents.Traveler;

namespace WeldTrace.Documents.TestReports;

/// <summary>The order of a test report's parts.</summary>
internal static class TestReportDocument
{
    private const double HighestPicture = 380;
    private const double HighestSeam = 210;

    public static string Title(TestReportModel model) => $"{model.Title}, {model.Subject}";

    public static IReadOnlyList<Block> Blocks(TestReportModel model) =>
        [
            .. Head(model),
            .. Part.Of("Result", Result(model)),
            .. Part.Of("Test", Values(model.Particulars)),
            .. Drawings(model),
            .. Part.Of(
                "Photographs",
                model.Photographs.Select(p => new Picture(p, HighestPicture))
            ),
            .. Part.Of("Measurements", Measurements(model)),
            .. model.Tables.SelectMany(TableOf),
            .. Part.Of("Place on the seam", model.Seams.SelectMany(Seam)),
            .. Part.Of(
                "Replaced before the signature",
                model.Replaced.Select(r => new Paragraph(r))
            ),
            .. Part.Of("How this was worked out", model.Workings.SelectMany(WorkingPart.Of)),
            .. SignaturePart.Blocks(model.Signatures, [], model.Stamp),
            .. SourceTable.Blocks(model.Sources),
        ];

    private static IEnumerable<Block> Head(TestReportModel model)
    {
        Block[] left =
        [
            new Paragraph(model.Stamp.SiteName, Styles.Site),
            new Heading(model.Title, 1),
            new Paragraph(model.Subject),
            Grid.Of([GridItem.Of("Verdict", model.Verdict)], pairs: 1),
        ];
        yield return new SideBySide(new Stack(left), RecordLink.Of(model.RecordAddress), 0.7);
        if (model.Notices.Count > 0)
        {
            yield return new Notice("Not a certificate", model.Notices, MarkShape.Triangle);
        }

        foreach (var notice in UncheckedNotice.Of(model.UncheckedLimits))
        {
            yield return notice;
        }

        if (model.IsUnderPressure)
        {
            yield return Cautions.ForVessel();
        }
    }

    private static IEnumerable<Block> Measurements(TestReportModel model)
    {
        if (model.Measurements.Count > 0)
        {
            yield return SectionPart.Measurements(model.Measurements, struck: false);
            yield return new Paragraph(
                "Sizes with their expanded uncertainty, k = 2; an undecided result is not a pass.",
                Styles.Note
            );
        }
    }

    private static IEnumerable<Block> Seam(ReportSeam seam)
    {
        yield return new Heading(seam.Title, 3);
        yield return new Figure(new SeamDrawing(seam.Plan), seam.Caption, HighestSeam);
    }

    private static IEnumerable<Block> Result(TestReportModel model)
    {
        yield return new Paragraph(model.Explanation);
        foreach (var block in Values(model.Results))
        {
            yield return block;
        }
    }

    private static IEnumerable<Block> Values(IReadOnlyList<LabelledValue> values) =>
        values.Count == 0 ? [] : [Grid.Of(values.Select(GridItem.Of), pairs: 1)];

    private static IEnumerable<Block> Drawings(TestReportModel model)
    {
        if (model.Ladder is { } ladder)
        {
            yield return new Heading("Pressure over time", 2);
            yield return new Figure(
                new PressureLadderDrawing(ladder, model.Stamp.Units),
                "Line: plan, heavy where held; crosses: readings; fine line: logger; dashed: named levels."
            );
        }

        foreach (var plot in model.Plots)
        {
            yield return new Heading(plot.Title, 2);
            yield return new Figure(new XyPlotDrawing(plot.Plot), plot.Key);
        }
    }

    private static IEnumerable<Block> TableOf(ReportTable table)
    {
        yield return new Heading(table.Title, 2);
        var columns = table.Heads.Select(
            (head, i) => new TableColumn(head, i == 0 ? 1.3 : 1, IsNumber: i > 0 && table.IsNumeric)
        );
        var rows = table.Rows.Select(row => new TableRow([
            .. row.Select((text, i) => new Cell(text) { IsHead = i == 0 }),
        ]));
        yield return new Table([.. columns], [.. rows]);
    }
}
