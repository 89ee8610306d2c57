using System.Globalization;
using WeldTrace.Domain.Tooling;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Tools.List;

public static class ToolCsv
{
    private static readonly string[] Heads = ["mark", "design", "state", "used m", "limit m"];

    public static void MapToolCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/tools.csv",
            async (HttpContext http, ToolListReader reader) =>
            {
                var address = new Uri(
                    Microsoft.AspNetCore.Http.Extensions.UriHelper.GetEncodedUrl(http.Request)
                );
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(address, ToolListReader.SortKeys),
                    whole: true,
                    http.RequestAborted
                );
                return CsvText.File("tools.csv", Heads, rows.Select(Row));
            }
        );

    private static IReadOnlyList<string?> Row(Tool tool) =>
        [
            tool.Mark,
            tool.DesignLabel,
            Tool.StateWord(tool.State),
            tool.Used.Metres.ToString("0.000", CultureInfo.InvariantCulture),
            tool.LifeLimit.Metres.ToString("0.###", CultureInfo.InvariantCulture),
        ];
}
