using System.Globalization;
using WeldTrace.Domain.Material;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Material.Components;

public static class ComponentCsv
{
    private static readonly string[] Heads =
    [
        "serial",
        "what",
        "lot",
        "cast",
        "made by",
        "made on",
        "standing",
    ];

    public static void MapComponentCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.ComponentsCsv,
            async (HttpContext http, ComponentReader reader) =>
            {
                var address = new Uri(
                    Microsoft.AspNetCore.Http.Extensions.UriHelper.GetEncodedUrl(http.Request)
                );
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(address, ComponentReader.SortKeys),
                    whole: true,
                    http.RequestAborted
                );
                return CsvText.File("components.csv", Heads, rows.Select(Row));
            }
        );

    private static IReadOnlyList<string?> Row(CutComponent component) =>
        [
            component.Serial,
            component.PartKind,
            component.LotNumber,
            component.CastNumber,
            component.MadeBy,
            component.MadeOn.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            ComponentStanding.Of(component).Word,
        ];
}
