using Microsoft.AspNetCore.Http.Extensions;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Designs.List;

public static class DesignCsv
{
    private static readonly string[] Heads = ["number", "revision", "title", "state", "author"];

    public static void MapDesignCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.DesignsCsv,
            async (HttpContext http, DesignListReader reader) =>
            {
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(
                        new Uri(http.Request.GetEncodedUrl()),
                        DesignListReader.SortKeys
                    ),
                    whole: true,
                    http.RequestAborted
                );
                return CsvText.File("designs.csv", Heads, rows.Select(Row));
            }
        );

    private static IReadOnlyList<string?> Row(VesselDesign design) =>
        [
            design.Number,
            design.Revision,
            design.Title,
            VesselDesign.StateWord(design.State),
            design.AuthorName,
        ];
}
