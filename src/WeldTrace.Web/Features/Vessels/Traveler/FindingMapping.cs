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
            Title = FindingWords.OriginWord(finding.Origin),
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
        foreach (var earlier in finding.EarlierDecisions ?? [])
        {
            yield return new DispositionLine(
                $"{Finding.DispositionWord(earlier.Kind)}, replaced by a later decision",
                earlier.Reason,
                earlier.PrintedName,
                earlier.At
            );
        }

        if (finding.Disposition is { } decided)
        {
            yield return new DispositionLine(
                Finding.DispositionWord(decided.Kind),
                decided.Reason,
                decided.PrintedName,
                decided.At
            );
        }

        if (finding.Board is { } board)
        {
            yield return new DispositionLine(
                $"review board, {board.Reference}",
                $"{board.Text} Members: {board.Members}",
                board.PrintedName,
                board.At
            );
        }

        if (finding.Repair is { } repair)
        {
            yield return new DispositionLine(
                $"repaired by {finding.PlannedRepair?.Procedure.Label}",
                FormattableString.Invariant(
                    $"{repair.Length.Millimetres:0} mm of seam, attempt {finding.PlannedRepair?.Attempt}. {repair.Note}"
                ),
                repair.PrintedName,
                repair.At
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
}
