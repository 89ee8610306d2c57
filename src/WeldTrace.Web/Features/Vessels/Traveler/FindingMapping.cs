using WeldTrace.Documents.Traveler;
using WeldTrace.Domain.Findings;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Traveler;

internal static class FindingMapping
{
    public static FindingSheet Map(Finding finding) =>
        new()
        {
            Number = finding.Label,
            Title = OriginWord(finding.Origin),
            State = PrintedMarks.Of(
                DomainMarks.Of(finding.State),
                Finding.StateWord(finding.State)
            ),
            OpenedBy = finding.OpenedBy,
            OpenedAt = finding.OpenedAt,
            RaisedFrom = FormattableString.Invariant(
                $"step {finding.StepSequence}, {finding.EvidenceKind?.Replace('-', ' ') ?? "report"}"
            ),
            Description = finding.Description,
            Dispositions = [.. Decisions(finding)],
        };

    private static IEnumerable<DispositionLine> Decisions(Finding finding)
    {
        if (finding.Disposition is { } decided)
        {
            yield return new DispositionLine(
                Finding.DispositionWord(decided.Kind),
                decided.Reason,
                decided.PrintedName,
                decided.At
            );
        }

        if (finding.Verification is { } verified)
        {
            yield return new DispositionLine(
                "verified and closed",
                verified.Note,
                verified.PrintedName,
                verified.At
            );
        }
    }

    private static string OriginWord(FindingOrigin origin) =>
        origin switch
        {
            FindingOrigin.Excursion => "excursion from the window",
            FindingOrigin.InterruptedRun => "interrupted run",
            FindingOrigin.LeakTest => "leak test",
            FindingOrigin.PressureTest => "pressure test",
            FindingOrigin.Examination => "examination",
            FindingOrigin.Report => "report",
            FindingOrigin.LotSample => "sample of the lot",
            _ => throw new ArgumentOutOfRangeException(nameof(origin), origin, null),
        };
}
