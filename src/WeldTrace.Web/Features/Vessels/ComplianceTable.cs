using WeldTrace.Domain.Compliance;

namespace WeldTrace.Web.Features.Vessels;

/// <summary>The compliance matrix as a table of texts, for the page's CSV and the bundle's.</summary>
internal static class ComplianceTable
{
    public static IReadOnlyList<string> Heads { get; } =
    [
        "number",
        "requirement",
        "source",
        "source known",
        "applicable",
        "state",
        "evidence",
        "comment",
    ];

    public static IEnumerable<IReadOnlyList<string?>> Rows(IEnumerable<ComplianceLine> lines) =>
        lines.Select(line =>
            (IReadOnlyList<string?>)
                [
                    line.Requirement.Number,
                    line.Requirement.Text,
                    line.Requirement.Source,
                    ComplianceMatrix.KnownWord(line.Requirement.Known),
                    line.IsApplicable ? "yes" : "no",
                    ComplianceMatrix.StateWord(line.State),
                    string.Join("; ", line.Evidence.Select(e => $"{e.Label} ({e.Kind} {e.Id:D})")),
                    line.Comment,
                ]
        );
}
