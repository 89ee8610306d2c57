using WeldTrace.Domain.Vessels;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.List;

public static class VesselCsv
{
    private static readonly string[] Heads =
    [
        "serial",
        "design",
        "production lot",
        "state",
        "next step",
    ];

    public static void MapVesselCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/vessels.csv",
            async (HttpContext http, VesselListReader reader) =>
            {
                var address = new Uri(
                    Microsoft.AspNetCore.Http.Extensions.UriHelper.GetEncodedUrl(http.Request)
                );
                var query = TableQuery.Read(address, VesselListReader.SortKeys);
                var (rows, _) = await reader.ReadAsync(query, whole: true, http.RequestAborted);
                return CsvText.File(
                    "vessels.csv",
                    Heads,
                    rows.Select(v =>
                        (IReadOnlyList<string?>)
                            [
                                v.Serial,
                                v.DesignLabel,
                                v.ProductionLot,
                                Vessel.StateWord(v.State),
                                v.NextStep?.Title,
                            ]
                    )
                );
            }
        );
}
