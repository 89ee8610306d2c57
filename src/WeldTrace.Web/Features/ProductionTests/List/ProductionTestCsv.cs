using System.Globalization;
using Microsoft.AspNetCore.Http.Extensions;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.ProductionTests.List;

public static class ProductionTestCsv
{
    private static readonly string[] Heads =
    [
        "test weld",
        "machine",
        "procedure",
        "tool",
        "at UTC",
        "result",
        "passed",
        "inspector",
    ];

    public static void MapProductionTestCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.ProductionTestsCsv,
            async (HttpContext http, ProductionTestListReader reader) =>
            {
                var query = TableQuery.Read(
                    new Uri(http.Request.GetEncodedUrl()),
                    ProductionTestListReader.SortKeys
                );
                var (rows, _) = await reader.ReadAsync(query, whole: true, http.RequestAborted);
                return CsvText.File("production-tests.csv", Heads, rows.Select(Cells));
            }
        );

    private static IReadOnlyList<string?> Cells(ProductionTest test) =>
        [
            test.Mark,
            test.MachineName,
            test.ProcedureLabel,
            test.ToolMark,
            test.At.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
            test.Result,
            test.HasPassed ? "yes" : "no",
            test.InspectorName,
        ];
}
