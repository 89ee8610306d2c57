using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>One section or examination with its measurements and photographs.</summary>
internal static class SectionPart
{
    public static IEnumerable<Block> Blocks(SectionSheet section, DocumentStamp stamp)
    {
        var struck = section.Superseded is not null;
        yield return new Heading(
            $"{section.Title}, {section.Reference}",
            3,
            section.Verdict,
            struck
        );
        foreach (var note in WeldRunPart.Correction(section.Superseded, stamp))
        {
            yield return note;
        }

        var examined = section.ExaminedAt is { } at ? SiteTime.Minute(at, stamp.TimeZone) : null;
        GridItem[] facts =
        [
            new("Inspector", section.Inspector),
            new("Examined", examined),
            .. section.Particulars.Select(GridItem.Of),
        ];
        yield return Grid.Of(facts, struck: struck);
        if (section.Measurements.Count > 0)
        {
            yield return Measurements(section.Measurements, struck);
        }

        foreach (var photograph in section.Photographs)
        {
            yield return new Picture(photograph);
        }

        if (section.Explanation is not null)
        {
            yield return new Paragraph(section.Explanation, struck: struck);
        }
    }

    private static Table Measurements(IReadOnlyList<MeasurementLine> measurements, bool struck)
    {
        TableColumn[] columns =
        [
            new("Imperfection or dimension", 44),
            new("Unit", 10),
            new("Measured", 18, IsNumber: true),
            new("Limit", 18, IsNumber: true),
            new("Verdict", 24),
        ];
        var rows = measurements.Select(line => new TableRow([
            new Cell(line.Name) { IsHead = true },
            line.Unit,
            line.Measured,
            line.Limit,
            Cell.Of(line.Verdict),
        ])
        {
            Struck = struck,
        });
        return new Table(columns, [.. rows]);
    }
}
