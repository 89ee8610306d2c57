using WeldTrace.Documents;
using WeldTrace.Documents.RecordSheets;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Sites;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Findings.Report;

/// <summary>The parts of a finding's report, in the order of what happened.</summary>
internal static class FindingParts
{
    public static IEnumerable<SheetPart> Of(Finding finding, Site site)
    {
        yield return new SheetPart("What was found") { Sentences = [finding.Description] };
        if (finding.Cause is { } cause)
        {
            yield return new SheetPart("Cause")
            {
                Sentences = [cause.Text],
                Values =
                [
                    new("Kind of defect", FindingWords.DefectWord(cause.Type)),
                    Who("Stated by", cause.PrintedName, cause.At, site),
                ],
            };
        }

        if (finding.Containments is { Count: > 0 } searches)
        {
            yield return Containment(searches, site);
        }

        if (finding.Board is { } board)
        {
            yield return new SheetPart("Material review board")
            {
                Sentences = [board.Text],
                Values =
                [
                    new("Minutes", board.Reference),
                    new("Members", board.Members),
                    Who("Recorded by", board.PrintedName, board.At, site),
                ],
            };
        }

        foreach (var earlier in finding.EarlierDecisions ?? [])
        {
            yield return Decision("Disposition, replaced by a later one", earlier, site);
        }

        if (finding.Disposition is { } decided)
        {
            yield return Decision("Disposition", decided, site);
        }

        if (finding.PlannedRepair is { } planned)
        {
            yield return Repair(planned, finding.Repair, site);
        }

        if (finding.Verification is { } verified)
        {
            yield return new SheetPart("Verification")
            {
                Sentences = [verified.Note],
                Values = [Who("Verified by", verified.PrintedName, verified.At, site)],
            };
        }
    }

    private static SheetPart Decision(string title, Disposition decided, Site site) =>
        new(title)
        {
            Sentences = [decided.Reason],
            Values =
            [
                new("What happens", Finding.DispositionWord(decided.Kind)),
                Who("Decided by", decided.PrintedName, decided.At, site),
            ],
        };

    private static SheetPart Containment(IReadOnlyList<Containment> searches, Site site) =>
        new("Containment")
        {
            Table = new SheetTable(
                [
                    ("Searched", 20),
                    ("In common", 28),
                    ("Window", 22),
                    ("Listed", 9),
                    ("Held", 20),
                    ("Why", 28),
                ],
                [
                    .. searches.Select(s => new SheetRow([
                        $"{s.PrintedName}, {site.Show(s.At)}",
                        string.Join(", ", s.Shared.Select(FindingWords.SharedWord)),
                        FormattableString.Invariant($"{s.From:yyyy-MM-dd} to {s.Until:yyyy-MM-dd}"),
                        FormattableString.Invariant($"{s.Listed}"),
                        s.Held.Count == 0 ? "none" : string.Join(", ", s.Held.Select(h => h.Label)),
                        s.Reason,
                    ])),
                ]
            ),
        };

    private static SheetPart Repair(RepairPlan planned, RepairWork? work, Site site) =>
        new("Repair")
        {
            Sentences = work is null ? ["Not yet carried out."] : [work.Note],
            Values =
            [
                new("Procedure", planned.Procedure.Label),
                .. planned.Place is { } place
                    ?
                    [
                        new LabelledValue(
                            "Where",
                            FormattableString.Invariant(
                                $"joint {place.JointCode}, pass {place.PassNumber}, {place.Start.Degrees:0.0}° to {place.End.Degrees:0.0}° from the start of the pass"
                            )
                        ),
                    ]
                    : Array.Empty<LabelledValue>(),
                new("Weld run", planned.Run?.Label),
                new("Attempt at this place", FormattableString.Invariant($"{planned.Attempt}")),
                new(
                    "Done anew",
                    FormattableString.Invariant(
                        $"every test and examination after step {planned.WeldStep}, by the same methods"
                    )
                ),
                .. work is null
                    ? Array.Empty<LabelledValue>()
                    :
                    [
                        new(
                            "Length repaired",
                            FormattableString.Invariant($"{work.Length.Millimetres:0.#} mm")
                        ),
                        Who("Repaired by", work.PrintedName, work.At, site),
                    ],
            ],
        };

    private static LabelledValue Who(string what, string name, DateTimeOffset at, Site site) =>
        new(what, $"{name}, {site.Show(at)}");
}
