using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>Findings with their dispositions, and concessions.</summary>
internal static class FindingPart
{
    public static IEnumerable<Block> Blocks(TravelerModel model)
    {
        yield return new Heading("Findings", 2);
        if (model.Findings.Count == 0)
        {
            yield return new Paragraph("No finding is recorded against this vessel.");
        }

        foreach (var block in model.Findings.SelectMany(f => Finding(f, model.Stamp)))
        {
            yield return block;
        }

        if (model.Concessions.Count > 0)
        {
            yield return new Heading("Concessions", 2);
            yield return Concessions(model.Concessions, model.Stamp.TimeZone);
        }
    }

    private static IEnumerable<Block> Finding(FindingSheet finding, DocumentStamp stamp)
    {
        var struck = finding.Superseded is not null;
        yield return new Heading(
            $"Finding {finding.Number}: {finding.Title}",
            3,
            finding.State,
            struck
        );
        foreach (var note in WeldRunPart.Correction(finding.Superseded, stamp))
        {
            yield return note;
        }

        GridItem[] facts =
        [
            new("Opened by", finding.OpenedBy),
            new("Opened", SiteTime.Minute(finding.OpenedAt, stamp.TimeZone)),
            new("Raised from", finding.RaisedFrom),
        ];
        yield return Grid.Of(facts, struck: struck);
        if (finding.Description is not null)
        {
            yield return new Paragraph(finding.Description, struck: struck);
        }

        yield return finding.Dispositions.Count == 0
            ? new Paragraph("Not yet disposed of.", Styles.Strong)
            : Dispositions(finding.Dispositions, stamp.TimeZone, struck);
    }

    private static Table Dispositions(
        IReadOnlyList<DispositionLine> dispositions,
        TimeZoneInfo zone,
        bool struck
    )
    {
        TableColumn[] columns =
        [
            new("Decision", 18),
            new("Reason", 48),
            new("Decided by", 18),
            new("Decided", 17),
        ];
        var rows = dispositions.Select(line => new TableRow([
            new Cell(line.Decision) { IsHead = true },
            line.Reason,
            line.DecidedBy,
            SiteTime.Minute(line.DecidedAt, zone),
        ])
        {
            Struck = struck || line.Superseded is not null,
            Note = CorrectionText.Note(line.Superseded, zone),
        });
        return new Table(columns, [.. rows]);
    }

    private static Table Concessions(IReadOnlyList<ConcessionSheet> concessions, TimeZoneInfo zone)
    {
        TableColumn[] columns =
        [
            new("No.", 12),
            new("Rule waived", 24),
            new("Step", 16),
            new("Reason", 34),
            new("Granted by", 20),
            new("Granted", 17),
        ];
        var rows = concessions.Select(line => new TableRow([
            new Cell(line.Number) { IsHead = true },
            line.Rule,
            line.Step,
            line.Reason,
            string.Join(", ", line.GrantedBy),
            SiteTime.Minute(line.GrantedAt, zone),
        ])
        {
            Struck = line.Superseded is not null,
            Note = CorrectionText.Note(line.Superseded, zone),
        });
        return new Table(columns, [.. rows]);
    }
}
