namespace WeldTrace.Web.Features.LedgerView.Check;

public static class LedgerCheckEndpoint
{
    /// <summary>How far the check is, for the page that waits for it.</summary>
    public static void MapLedgerCheck(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.LedgerCheckState,
            (LedgerCheckDesk job) =>
                Results.Json(new { Running = job.State?.Progress is not null, job.State?.Progress })
        );
}
