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
            struck,
            CorrectionText.Mark(section.Superseded)
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

        foreach (var replaced in section.Replaced)
        {
            yield return new Paragraph(replaced, Styles.Note);
        }

        if (section.Explanation is not null)
        {
            yield return new Paragraph(section.Explanation, struck: struck);
        }
    }

    public static Table Measurements(IReadOnlyList<MeasurementLine> measurements, bool struck)
    {
        TableColumn[] columns =
        [
            new("Imperfection or dimension", 32),
            new("Unit", 8),
            new("Measured", 20, IsNumber: true),
            new("Place", 34),
            new("Limit", 14, IsNumber: true),
            new("Verdict", 20),
        ];
        var rows = measurements.Select(line => new TableRow([
            new Cell(line.Name) { IsHead = true },
            line.Unit,
            line.Measured,
            line.Place,
            line.Limit,
            Cell.Of(line.Verdict),
        ])
        {
            Struck = struck,
            Note = line.LimitSource,
        });
        return new Table(columns, [.. rows]);
    }
}
