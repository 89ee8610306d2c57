using System.Globalization;
using WeldTrace.Domain.Limits;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Limits.List;

public static class LimitCsv
{
    private static readonly string[] Heads =
    [
        "code",
        "edition",
        "kind",
        "title",
        "source",
        "origin",
        "standing",
        "checked by",
        "checked on",
    ];

    public static void MapLimitCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.LimitsCsv,
            async (HttpContext http, LimitListReader reader) =>
            {
                var address = new Uri(
                    Microsoft.AspNetCore.Http.Extensions.UriHelper.GetEncodedUrl(http.Request)
                );
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(address, LimitListReader.SortKeys),
                    whole: true,
                    http.RequestAborted
                );
                return CsvText.File("limits.csv", Heads, rows.Select(Row));
            }
        );

    private static IReadOnlyList<string?> Row(LimitTable table) =>
        [
            table.Code,
            table.Edition.ToString(CultureInfo.InvariantCulture),
            LimitWords.Of(table.Covers),
            table.Text.Title,
            table.Text.Source.ToString(),
            LimitWords.Of(table.Evidence),
            LimitStanding.Of(table).Word,
            table.OwnCheck?.ByName,
            table.OwnCheck?.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        ];
}
