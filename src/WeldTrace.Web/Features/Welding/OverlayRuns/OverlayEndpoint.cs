using WeldTrace.Web.Components.Charts;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Welding.OverlayRuns;

public static class OverlayEndpoint
{
    public static void MapRunOverlay(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.OverlaySamples,
            async (
                string? parameter,
                string[]? run,
                double? from,
                double? to,
                OverlayReader reader,
                SiteReader sites,
                HttpResponse response,
                CancellationToken cancellation
            ) =>
            {
                var site = await sites.GetAsync(cancellation);
                var query = OverlayQuery.Read(parameter, run);
                var bytes = await reader.SamplesAsync(query, site.Units, from, to, cancellation);
                response.Headers.CacheControl = "private, no-cache";
                return bytes is null
                    ? Results.NotFound()
                    : Results.Bytes(bytes, ChartColumns.ContentType);
            }
        );
}
