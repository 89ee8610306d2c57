using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>One leak test with its readings and verdict.</summary>
internal static class LeakTestPart
{
    public static IEnumerable<Block> Blocks(LeakTestSheet test, DocumentStamp stamp)
    {
        var struck = test.Superseded is not null;
        yield return new Heading(
            $"Leak test, {test.Reference}: {test.Method}",
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
        if (test.Readings.Count > 0)
        {
            yield return Readings(test.Readings, stamp.Units, struck);
        }

        if (test.Explanation is not null)
        {
            yield return new Paragraph(test.Explanation, struck: struck);
        }
    }

    private static Table Readings(
        IReadOnlyList<LeakReadingLine> readings,
        UnitSystem units,
        bool struck
    )
    {
        TableColumn[] columns =
        [
            new("Elapsed", 22, IsNumber: true),
            new("Gauge pressure", 22, IsNumber: true),
            new("Gas temperature", 22, IsNumber: true),
            new("Remark", 50),
        ];
        var rows = readings.Select(reading => new TableRow([
            QuantityText.Duration(reading.Elapsed),
            QuantityText.FinePressure(reading.Pressure, units),
            QuantityText.Temperature(reading.Temperature, units),
            reading.Remark ?? " ",
        ])
        {
            Struck = struck,
        });
        return new Table(columns, [.. rows]);
    }
}
