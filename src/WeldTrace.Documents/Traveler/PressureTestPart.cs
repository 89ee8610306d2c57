using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>One staged pressure test: stages, readings, dimensions, chart and verdict.</summary>
internal static class PressureTestPart
{
    public static IEnumerable<Block> Blocks(PressureTestSheet test, DocumentStamp stamp)
    {
        var struck = test.Superseded is not null;
        yield return new Heading(
            $"{test.Title} {test.Reference}",
            3,
            test.Verdict,
            struck,
            CorrectionText.Mark(test.Superseded)
        );
        foreach (var note in WeldRunPart.Correction(test.Superseded, stamp))
        {
            yield return note;
        }

        GridItem[] facts =
        [
            new("Inspector", test.Inspector),
            new("Tested", test.TestedAt is { } at ? SiteTime.Minute(at, stamp.TimeZone) : null),
            .. test.Particulars.Select(GridItem.Of),
        ];
        yield return Grid.Of(facts, struck: struck);
        if (test.Stages.Count > 0)
        {
            yield return Stages(test.Stages, stamp.Units, struck);
        }

        if (test.Dimensions.Count > 0)
        {
            yield return Dimensions(test.Dimensions, struck);
        }

        if (test.Chart is { } chart)
        {
            yield return new Figure(
                new PressureLadderDrawing(chart, stamp.Units),
                "Line: plan, heavy where held; crosses: readings of the gauge; dashed: named levels."
            );
        }

        if (test.Explanation is not null)
        {
            yield return new Paragraph(test.Explanation, struck: struck);
        }
    }

    private static Table Stages(
        IReadOnlyList<PressureStageLine> stages,
        UnitSystem units,
        bool struck
    )
    {
        TableColumn[] columns =
        [
            new("Stage", 30),
            new("Target", 15, IsNumber: true),
            new("Hold", 18, IsNumber: true),
            new("At start of hold", 16, IsNumber: true),
            new("At end of hold", 16, IsNumber: true),
            new("Temperature", 15, IsNumber: true),
            new("Verdict", 20),
        ];
        var rows = stages.Select(stage => new TableRow([
            new Cell(stage.Name) { IsHead = true },
            QuantityText.Pressure(stage.Target, units),
            QuantityText.Duration(stage.Hold),
            QuantityText.Pressure(stage.AtStart, units),
            QuantityText.Pressure(stage.AtEnd, units),
            QuantityText.Temperature(stage.Temperature, units),
            Cell.Of(stage.Verdict),
        ])
        {
            Struck = struck,
        });
        return new Table(columns, [.. rows]);
    }

    private static Table Dimensions(IReadOnlyList<DimensionLine> dimensions, bool struck)
    {
        TableColumn[] columns =
        [
            new("Dimension", 34),
            new("Unit", 8),
            new("Before", 15, IsNumber: true),
            new("After", 15, IsNumber: true),
            new("Change", 15, IsNumber: true),
            new("Limit of change", 18, IsNumber: true),
            new("Verdict", 20),
        ];
        var rows = dimensions.Select(line => new TableRow([
            new Cell(line.Name) { IsHead = true },
            line.Unit,
            line.Before,
            line.After,
            line.Change,
            line.Limit,
            Cell.Of(line.Verdict),
        ])
        {
            Struck = struck,
        });
        return new Table(columns, [.. rows]);
    }
}
