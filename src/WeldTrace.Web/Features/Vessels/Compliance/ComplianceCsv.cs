using WeldTrace.Domain.Compliance;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Compliance;

public static class ComplianceCsv
{
    private static readonly string[] Heads =
    [
        "number",
        "requirement",
        "source",
        "source known",
        "state",
        "evidence",
        "comment",
    ];

    public static void MapCompliance(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/vessels/{serial}/compliance.csv",
            async (string serial, HttpContext http, ComplianceReader reader) =>
                await reader.FindAsync(serial, http.RequestAborted) is { } found
                    ? CsvText.File(
                        $"{FileNames.Safe(found.Vessel.Serial)}-compliance.csv",
                        Heads,
                        found.Lines.Select(Cells)
                    )
                    : Results.NotFound()
        );

    private static IReadOnlyList<string?> Cells(ComplianceLine line) =>
        [
            line.Requirement.Number,
            line.Requirement.Text,
            line.Requirement.Source,
            ComplianceMatrix.KnownWord(line.Requirement.Known),
            ComplianceMatrix.StateWord(line.State),
            string.Join("; ", line.Evidence.Select(e => $"{e.Label} ({e.Kind} {e.Id:D})")),
            line.Comment,
        ];
}
