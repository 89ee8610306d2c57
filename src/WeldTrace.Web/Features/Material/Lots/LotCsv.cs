using WeldTrace.Domain.Material;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Material.Lots;

public static class LotCsv
{
    private static readonly string[] Heads =
    [
        "number",
        "alloy",
        "temper",
        "cast",
        "form",
        "inspection document",
        "type",
        "product standard",
        "Rm MPa",
        "Rp0.2 MPa",
        "A %",
        "thickness mm",
        "standing",
    ];

    public static void MapLotCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.MaterialLotsCsv,
            async (HttpContext http, LotReader reader) =>
            {
                var address = new Uri(
                    Microsoft.AspNetCore.Http.Extensions.UriHelper.GetEncodedUrl(http.Request)
                );
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(address, LotReader.SortKeys),
                    whole: true,
                    http.RequestAborted
                );
                return CsvText.File("material-lots.csv", Heads, rows.Select(Row));
            }
        );

    private static IReadOnlyList<string?> Row(MaterialLot lot) =>
        [
            lot.Number,
            lot.Alloy,
            lot.Temper,
            lot.CastNumber,
            lot.Form,
            lot.CertificateNumber,
            lot.Document is { } document ? InspectionDocuments.Word(document.Type) : null,
            lot.Document?.ProductStandard,
            lot.Results?.Values.TensileStrength?.Digits,
            lot.Results?.Values.ProofStrength?.Digits,
            lot.Results?.Values.Elongation?.Digits,
            lot.Results?.Values.Thickness?.Digits,
            LotStanding.Of(lot).Word,
        ];
}
