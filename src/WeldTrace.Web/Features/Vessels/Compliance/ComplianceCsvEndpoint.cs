using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Compliance;

public static class ComplianceCsvEndpoint
{
    public static void MapCompliance(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/vessels/{serial}/compliance.csv",
            async (string serial, HttpContext http, ComplianceReader reader) =>
                await reader.FindAsync(serial, http.RequestAborted) is { } found
                    ? CsvText.File(
                        $"{FileNames.Safe(found.Vessel.Serial)}-compliance.csv",
                        ComplianceTable.Heads,
                        ComplianceTable.Rows(found.Lines)
                    )
                    : Results.NotFound()
        );
}
