using System.Globalization;
using Microsoft.AspNetCore.Http.Extensions;
using WeldTrace.Domain.Findings;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Findings.ListFindings;

public static class FindingsCsv
{
    private static readonly string[] Heads =
    [
        "finding",
        "vessel",
        "step",
        "from",
        "state",
        "description",
        "decision",
        "reason",
        "decided by",
        "verified by",
    ];

    public static void MapFindingsCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.FindingsCsv,
            async (HttpContext http, ListFindingsHandler handler) =>
            {
                var query = TableQuery.Read(
                    new Uri(http.Request.GetEncodedUrl()),
                    ListFindingsHandler.SortKeys
                );
                var rows = await handler.ReadAllAsync(query, http.RequestAborted);
                return CsvText.File("findings.csv", Heads, rows.Select(Cells));
            }
        );

    private static IReadOnlyList<string?> Cells(Finding finding) =>
        [
            finding.Label,
            finding.VesselSerial,
            finding.StepSequence.ToString(CultureInfo.InvariantCulture),
            FindingWords.OriginWord(finding.Origin),
            Finding.StateWord(finding.State),
            finding.Description,
            finding.Disposition is { } decision ? Finding.DispositionWord(decision.Kind) : null,
            finding.Disposition?.Reason,
            finding.Disposition?.PrintedName,
            finding.Verification?.PrintedName,
        ];
}
