using Microsoft.AspNetCore.Http.Extensions;
using WeldTrace.Domain.Vessels;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Findings.Contain;

public static class ContainmentCsv
{
    private static readonly string[] Heads = ["vessel", "state", "in common"];

    public static void MapContainmentCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/findings/{id:guid}/containment.csv",
            async (Guid id, HttpContext http, ContainHandler handler) =>
            {
                var query = TableQuery.Read(
                    new Uri(http.Request.GetEncodedUrl()),
                    ContainHandler.SortKeys
                );
                return
                    await handler.FindAsync(id, query, whole: true, http.RequestAborted) is { } view
                    ? CsvText.File(
                        $"containment-{view.Finding.Label}.csv",
                        Heads,
                        view.Rows.Select(r =>
                            new[] { r.Serial, Vessel.StateWord(r.VesselState), r.Shared }
                        )
                    )
                    : Results.NotFound();
            }
        );
}
