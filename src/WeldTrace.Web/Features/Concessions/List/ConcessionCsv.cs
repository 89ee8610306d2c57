using System.Globalization;
using Microsoft.AspNetCore.Http.Extensions;
using WeldTrace.Domain.Concessions;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Concessions.List;

public static class ConcessionCsv
{
    private static readonly string[] Heads =
    [
        "vessel",
        "step",
        "rule",
        "what it said",
        "reason",
        "state",
        "asked by",
        "asked at (UTC)",
        "decided by",
        "decided at (UTC)",
        "why declined",
    ];

    public static void MapConcessionCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.ConcessionsCsv,
            async (HttpContext http, ConcessionListReader reader) =>
            {
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(
                        new Uri(http.Request.GetEncodedUrl()),
                        ConcessionListReader.SortKeys
                    ),
                    whole: true,
                    http.RequestAborted
                );
                return CsvText.File("concessions.csv", Heads, rows.Select(Row));
            }
        );

    private static IReadOnlyList<string?> Row(Concession concession) =>
        [
            concession.VesselSerial,
            concession.StepSequence.ToString(CultureInfo.InvariantCulture),
            concession.RuleId,
            concession.Forbids,
            concession.Reason,
            Concession.StateWord(concession.State),
            concession.AskedBy.PrintedName,
            CsvText.Instant(concession.AskedBy.At),
            concession.DecidedBy?.PrintedName,
            concession.DecidedBy is { } decided ? CsvText.Instant(decided.At) : null,
            concession.DeclinedBecause,
        ];
}
