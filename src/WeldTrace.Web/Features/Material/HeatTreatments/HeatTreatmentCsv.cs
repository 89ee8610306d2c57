using System.Globalization;
using Microsoft.AspNetCore.Http.Extensions;
using WeldTrace.Domain.Material;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Material.HeatTreatments;

public static class HeatTreatmentCsv
{
    private static readonly string[] Heads =
    [
        "load",
        "on",
        "furnace",
        "instruction",
        "parts",
        "cycle kept",
        "verdict",
    ];

    public static void MapHeatTreatmentCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.HeatTreatmentsCsv,
            async (HttpContext http, HeatTreatmentReader reader) =>
            {
                var address = new Uri(http.Request.GetEncodedUrl());
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(address, HeatTreatmentReader.SortKeys),
                    whole: true,
                    http.RequestAborted
                );
                return CsvText.File("heat-treatments.csv", Heads, rows.Select(Row));
            }
        );

    private static IReadOnlyList<string?> Row(HeatTreatment treatment) =>
        [
            treatment.Number,
            treatment.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            treatment.Furnace,
            treatment.Asked.Instruction,
            string.Join(' ', treatment.Parts.Select(p => p.Serial)),
            treatment.IsKept ? "yes" : "no",
            treatment.Verdict,
        ];
}
