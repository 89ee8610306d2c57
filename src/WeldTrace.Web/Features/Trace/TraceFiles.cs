using Microsoft.AspNetCore.Http.Extensions;
using WeldTrace.Documents;
using WeldTrace.Documents.RecordSheets;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Trace;

/// <summary>The vessels that were found, as a table for a spreadsheet and as a list to call them back by.</summary>
public static class TraceFiles
{
    private static readonly string[] Heads = ["serial", "production lot", "state", "where it is"];

    public static void MapTraceFiles(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapGet(Routes.TraceCsv, CsvAsync);
        endpoints.MapGet(Routes.RecallList, PrintAsync);
    }

    private static async Task<IResult> CsvAsync(HttpContext http, TraceReader reader)
    {
        var traced = await reader.ReadAsync(QueryOf(http), whole: true, http.RequestAborted);
        return CsvText.File("trace.csv", Heads, traced.Rows.Select(Cells));
    }

    private static Task<IResult> PrintAsync(
        HttpContext http,
        TraceReader reader,
        StampReader stamps
    ) =>
        http.PrintAsync(
            async (address, actor, token) =>
            {
                var query = QueryOf(http);
                var traced = await reader.ReadAsync(query, whole: true, token);
                using var pdf = new MemoryStream();
                RecordSheetExporter.Write(
                    List(
                        traced,
                        await stamps.ReadAsync(actor, token),
                        new Uri(address, query.WholeAt(Routes.Trace)).AbsoluteUri
                    ),
                    pdf
                );
                return pdf.ToArray();
            }
        );

    private static RecordSheetModel List(
        TracedVessels traced,
        DocumentStamp stamp,
        string address
    ) =>
        new()
        {
            Stamp = stamp,
            RecordAddress = address,
            Title = "Vessels to call back",
            Subtitle = traced.Words.Count > 0 ? string.Join(", ", traced.Words) : "every vessel",
            State = new StateMark(
                traced.Rows.Count == 1 ? "1 vessel" : $"{traced.Rows.Count} vessels",
                MarkShape.Triangle
            ),
            Signatures = null,
            Notices = [.. traced.Faults.Select(f => f.Sentence)],
            Parts =
            [
                new SheetPart("What to do")
                {
                    Sentences =
                    [
                        "Take these vessels out of use, let their pressure down by the usual procedure, and keep them apart until the workshop has decided. Never open, knock or move a vessel under pressure; local codes and licensed practice decide.",
                    ],
                },
                new SheetPart("Vessels")
                {
                    Table = new SheetTable(
                        [("Serial", 18), ("Lot", 18), ("Where it is", 64)],
                        [.. traced.Rows.Select(Row)]
                    ),
                },
            ],
        };

    private static SheetRow Row(TracedVessel vessel) =>
        new(
            [vessel.Serial, vessel.ProductionLot, TraceReader.Whereabouts(vessel)],
            PrintedMarks.Of(DomainMarks.Of(vessel.State), Vessel.StateWord(vessel.State))
        );

    private static IReadOnlyList<string?> Cells(TracedVessel vessel) =>
        [
            vessel.Serial,
            vessel.ProductionLot,
            Vessel.StateWord(vessel.State),
            TraceReader.Whereabouts(vessel),
        ];

    private static TableQuery QueryOf(HttpContext http) =>
        TableQuery.Read(new Uri(http.Request.GetEncodedUrl()), TraceReader.SortKeys);
}
