using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents;
using WeldTrace.Documents.Book;
using WeldTrace.Documents.RecordSheets;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Findings.Report;

/// <summary>Prints a finding with all that was decided and done about it.</summary>
public sealed class FindingReportReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteReader sites,
    StampReader stamps
) : RecordPaper<RecordSheetModel>(BookChapter.Of, RecordSheetExporter.Write)
{
    public override IReadOnlyList<string> Kinds => ["finding"];

    protected override async Task<RecordSheetModel?> ModelAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var finding = await db
            .Findings.AsNoTracking()
            .SingleOrDefaultAsync(f => f.Id == id, cancellation);
        if (finding is null)
        {
            return null;
        }

        var site = await sites.GetAsync(cancellation);
        return new RecordSheetModel
        {
            Stamp = await stamps.ReadAsync(actor, cancellation),
            RecordAddress = new Uri(address, Routes.Finding(id)).AbsoluteUri,
            Title = $"Finding {finding.Label}",
            Subtitle = $"Non-conformance report, vessel {finding.VesselSerial}",
            State = PrintedMarks.Of(
                DomainMarks.Of(finding.State),
                Finding.StateWord(finding.State)
            ),
            Notices =
                finding.State == FindingState.Closed
                    ? []
                    :
                    [
                        $"The finding is {Finding.StateWord(finding.State)}; it still holds the vessel.",
                    ],
            Particulars = [.. Particulars(finding, site)],
            Parts = [.. FindingParts.Of(finding, site)],
            Signatures = await db.SignatureEntriesAsync(finding, cancellation),
        };
    }

    private static IEnumerable<LabelledValue> Particulars(Finding finding, Site site) =>
        [
            new("Vessel", finding.VesselSerial),
            new("Step", FormattableString.Invariant($"{finding.StepSequence}")),
            new("From", FindingWords.OriginWord(finding.Origin)),
            new("Place", FindingWords.PlaceText(finding.Place)),
            new("Opened", $"{finding.OpenedBy}, {site.Show(finding.OpenedAt)}"),
        ];
}
