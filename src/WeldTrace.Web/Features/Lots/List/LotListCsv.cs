using System.Globalization;
using Microsoft.AspNetCore.Http.Extensions;
using WeldTrace.Domain.Lots;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Lots.List;

public static class LotListCsv
{
    private static readonly string[] Heads =
    [
        "lot",
        "design",
        "procedure",
        "tool design",
        "machine",
        "material lot",
        "from",
        "until",
        "vessels",
        "samples",
        "state",
    ];

    public static void MapLotListCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.LotsCsv,
            async (HttpContext http, LotListReader reader) =>
            {
                var query = TableQuery.Read(
                    new Uri(http.Request.GetEncodedUrl()),
                    LotListReader.SortKeys
                );
                var (rows, _) = await reader.ReadAsync(query, whole: true, http.RequestAborted);
                return CsvText.File("production-lots.csv", Heads, rows.Select(Cells));
            }
        );

    private static IReadOnlyList<string?> Cells(ProductionLot lot) =>
        [
            lot.Number,
            lot.DesignLabel,
            lot.Rule.Procedure.Label,
            lot.Rule.ToolDesign.Label,
            lot.Rule.Machine?.Label,
            lot.Rule.MaterialLot?.Label,
            lot.Rule.From.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            lot.Rule.Until.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            string.Join(' ', lot.Vessels.Select(v => v.Label)),
            string.Join(
                ' ',
                lot.Samples.Select(s => $"{s.Serial} ({SamplePlan.KindWord(s.Kind)})")
            ),
            ProductionLot.StateWord(lot.State),
        ];
}
