using System.Globalization;
using Microsoft.AspNetCore.Http.Extensions;
using WeldTrace.Domain.Testing;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Testing.ListTests;

public static class TestsCsv
{
    private static readonly string[] Heads =
    [
        "entered (UTC)",
        "vessel",
        "step",
        "kind",
        "verdict",
        "inspector",
        "state",
    ];

    public static void MapTestsCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.TestsCsv,
            async (HttpContext http, ListTestsHandler handler) =>
            {
                var query = TableQuery.Read(
                    new Uri(http.Request.GetEncodedUrl()),
                    ListTestsHandler.SortKeys
                );
                var rows = await handler.ReadAllAsync(query, http.RequestAborted);
                return CsvText.File("tests.csv", Heads, rows.Select(Cells));
            }
        );

    private static IReadOnlyList<string?> Cells(TestRow row) =>
        [
            CsvText.Instant(row.TestedAt),
            row.Serial,
            row.Step.ToString(CultureInfo.InvariantCulture),
            row.KindWord,
            TestRecord.VerdictWord(row.Verdict),
            row.Inspector,
            row.State,
        ];
}
