using System.Globalization;
using Microsoft.AspNetCore.Http.Extensions;
using WeldTrace.Domain.Tooling;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Tools.Designs;

public static class ToolDesignCsv
{
    private static readonly string[] Heads =
    [
        "drawing",
        "revision",
        "shoulder mm",
        "pin mm",
        "pin length mm",
        "material",
        "life m",
        "evidence",
    ];

    public static void MapToolDesignCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.ToolDesignsCsv,
            async (HttpContext http, ToolDesignListReader reader) =>
            {
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(
                        new Uri(http.Request.GetEncodedUrl()),
                        ToolDesignListReader.SortKeys
                    ),
                    whole: true,
                    http.RequestAborted
                );
                return CsvText.File("tool-designs.csv", Heads, rows.Select(Row));
            }
        );

    private static IReadOnlyList<string?> Row(ToolDesign design) =>
        [
            design.Number,
            design.Revision,
            Digits(design.Geometry.ShoulderDiameter.Millimetres),
            Digits(design.Geometry.PinDiameter.Millimetres),
            Digits(design.Geometry.PinLength.Millimetres),
            design.Geometry.Material,
            Digits(design.Geometry.LifeLimit.Metres),
            design.Geometry.LifeEvidence,
        ];

    private static string Digits(double value) =>
        value.ToString("0.######", CultureInfo.InvariantCulture);
}
