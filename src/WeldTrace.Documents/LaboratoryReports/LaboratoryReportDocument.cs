using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Layout;
using WeldTrace.Documents.Traveler;

namespace WeldTrace.Documents.LaboratoryReports;

/// <summary>The order of a test report's parts.</summary>
internal static class LaboratoryReportDocument
{
    private const double TablesWidth = 114;

    public static IReadOnlyList<Block> Blocks(LaboratoryReportModel model) =>
        [
            .. Head(model),
            .. Part.Of("Picture", model.Pictures.Select(p => new Picture(p, 380))),
            .. Part.Of("Measurements", Measurements(model)),
            .. model.Tables.SelectMany(t => Part.Of(t.Title, [Table(t)])),
            .. model.Plots.SelectMany(p =>
                Part.Of(p.Title, [new Figure(new XyPlotDrawing(p.Plot), p.Caption)])
            ),
            .. Part.Of("Place on the seam", model.Seams.SelectMany(Seam)),
            .. Part.Of(
                "Replaced before the signature",
                model.Replaced.Select(r => new Paragraph(r))
            ),
            .. Part.Of("Instruments", Instruments(model)),
            .. Part.Of("People", People(model)),
            .. SignaturePart.Blocks(model.Signatures, [], model.Stamp),
        ];

    private static IEnumerable<Block> Head(LaboratoryReportModel model)
    {
        Block[] left =
        [
            new Paragraph(model.Stamp.SiteName, Styles.Site),
            new Heading(model.Title, 1, model.Verdict),
            Grid.Of(model.Particulars.Select(GridItem.Of), pairs: 1),
        ];
        yield return new SideBySide(new Stack(left), RecordLink.Of(model.RecordAddress), 0.7);
        if (model.Withdrawn is { } withdrawn)
        {
            yield return new Notice("Withdrawn", [withdrawn], MarkShape.Cross);
        }

        foreach (var notice in UncheckedNotice.Of(model.UncheckedLimits))
        {
            yield return notice;
        }

        if (model.Explanation is { Length: > 0 } explanation)
        {
            yield return new Paragraph(explanation);
        }
    }

    private static IEnumerable<Block> Measurements(LaboratoryReportModel model)
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
        yield return new Figure(new SeamDrawing(seam.Plan), seam.Caption, 210);
    }

    private static IEnumerable<Block> Instruments(LaboratoryReportModel model)
    {
        if (model.Instruments.Count > 0)
        {
            yield return Table(
                new(
                    "",
                    ["Instrument", "Measures", "Calibrated until"],
                    [
                        .. model.Instruments.Select(i =>
                            (IReadOnlyList<string>)[i.Mark, i.Measures, i.CalibratedUntil]
                        ),
                    ]
                )
            );
        }
    }

    private static IEnumerable<Block> People(LaboratoryReportModel model)
    {
        if (model.People.Count > 0)
        {
            yield return Table(
                new(
                    "",
                    ["Person", "Did", "Certificate"],
                    [
                        .. model.People.Select(p =>
                            (IReadOnlyList<string>)[p.Name, p.Did, p.Certificate]
                        ),
                    ]
                )
            );
        }
    }

    private static Table Table(ReportTable table)
    {
        var columns = table.Columns.Select(name => new TableColumn(
            name,
            TablesWidth / table.Columns.Count
        ));
        return new Table(
            [.. columns],
            [
                .. table.Rows.Select(row => new TableRow([
                    new Cell(row[0]) { IsHead = true },
                    .. row.Skip(1).Select(text => (Cell)text),
                ])),
            ]
        );
    }
}
