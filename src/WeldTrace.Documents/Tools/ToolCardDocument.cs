using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Layout;
using WeldTrace.Documents.Traveler;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.Tools;

/// <summary>The order of a tool card's parts.</summary>
internal static class ToolCardDocument
{
    public static IReadOnlyList<Block> Blocks(ToolCardModel model) =>
        [
            .. Head(model),
            .. LifePart(model),
            .. UsePart(model),
            .. InspectionPart(model),
            .. model.Photographs.Select(photograph => new Picture(photograph)),
            .. SignaturePart.Blocks(model.Signatures, [], model.Stamp),
        ];

    private static IEnumerable<Block> Head(ToolCardModel model)
    {
        GridItem[] items =
        [
            new("Design", model.Design),
            GridItem.Of("State", model.State),
            .. model.Particulars.Select(GridItem.Of),
        ];
        Block[] left =
        [
            new Paragraph(model.Stamp.SiteName, Styles.Site),
            new Heading($"Tool card {model.Serial}", 1),
            Grid.Of(items, pairs: 1),
        ];
        yield return new SideBySide(new Stack(left), RecordLink.Of(model.RecordAddress), 0.7);
        if (model.Retirement is { } end)
        {
            var when = SiteTime.Minute(end.RetiredAt, model.Stamp.TimeZone);
            var sentence = $"Retired {when} by {end.RetiredBy}: {end.Reason.TrimEnd('.')}.";
            yield return new Notice("Not to be used", [sentence], MarkShape.Cross);
        }

        yield return Cautions.ForWelding();
    }

    private static IEnumerable<Block> LifePart(ToolCardModel model)
    {
        yield return new Heading("Life", 2);
        var measured = model
            .Inspections.Where(line => line.Measured.Count > 0)
            .Select(line => line.AtUse)
            .OfType<Length>();
        yield return new Figure(
            new LifeBarDrawing(model.Life, [.. measured], model.Stamp.Units),
            "Path in the unit shown. Hatched: welded so far; triangles: measured; dashed: next inspection due."
        );
        if (model.LifeFigures.Count > 0)
        {
            yield return Grid.Of(model.LifeFigures.Select(GridItem.Of), pairs: 1);
        }

        if (model.Wear is { } wear)
        {
            yield return new Heading("Wear of the pin", 3);
            yield return new Figure(
                new XyPlotDrawing(wear),
                "Discs: measured, within the limits; crosses: outside. The line is a trend, no guarantee: pins can break long before."
            );
        }

        if (model.Failures is { } failures)
        {
            yield return new Heading("Failures of tools of this design", 3);
            yield return new Figure(
                new XyPlotDrawing(failures),
                "Discs: failed tools; rings on the axis: tools in use or retired for another reason."
            );
        }
    }

    private static IEnumerable<Block> UsePart(ToolCardModel model)
    {
        yield return new Heading("Uses", 2);
        if (model.Uses.Count == 0)
        {
            yield return new Paragraph("The tool has not been used yet.");
            yield break;
        }

        TableColumn[] columns =
        [
            new("When", 20),
            new("Run", 16),
            new("Vessel or test piece", 24),
            new("Joint", 12),
            new("Pass", 10),
            new("Path", 14, IsNumber: true),
            new("Total after", 14, IsNumber: true),
        ];
        var rows = model.Uses.Select(line => new TableRow([
            SiteTime.Minute(line.At, model.Stamp.TimeZone),
            line.Run,
            line.Vessel,
            line.Joint,
            line.Pass,
            QuantityText.Distance(line.Path, model.Stamp.Units),
            QuantityText.Distance(line.TotalAfter, model.Stamp.Units),
        ])
        {
            Struck = line.Superseded is not null,
            Note = CorrectionText.Note(line.Superseded, model.Stamp.TimeZone),
        });
        yield return new Table(columns, [.. rows]);
    }

    private static IEnumerable<Block> InspectionPart(ToolCardModel model)
    {
        yield return new Heading("Inspections", 2);
        if (model.Inspections.Count == 0)
        {
            yield return new Paragraph("The tool has not been inspected yet.");
            yield break;
        }

        TableColumn[] columns =
        [
            new("When", 18),
            new("Inspector", 18),
            new("At use", 12, IsNumber: true),
            new("Measured", 30),
            new("Verdict", 16),
            new("Remark", 26),
        ];
        var rows = model.Inspections.Select(line => new TableRow([
            SiteTime.Minute(line.At, model.Stamp.TimeZone),
            line.Inspector,
            QuantityText.Distance(line.AtUse, model.Stamp.Units),
            string.Join(
                '\n',
                line.Measured.Select(value => $"{value.Label}: {value.Value ?? "–"}")
            ),
            Cell.Of(line.Verdict),
            line.Remark,
        ])
        {
            Struck = line.Superseded is not null,
            Note = CorrectionText.Note(line.Superseded, model.Stamp.TimeZone),
        });
        yield return new Table(columns, [.. rows]);
    }
}
