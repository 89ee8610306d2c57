using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Web.Files;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Welding.BringLog;

/// <summary>Takes a log that the machine sent by itself as the log of a run: a person says which run it is of.</summary>
public static class TakeArrivedEndpoint
{
    public static void MapTakeArrived(this IEndpointRouteBuilder endpoints) =>
        endpoints
            .MapPost("/runs/{id:guid}/log/arrived/{arrival:guid}", TakeAsync)
            .RequireAuthorization(Policies.Working)
            .WithMetadata(new RequireAntiforgeryTokenAttribute());

    private static async Task<IResult> TakeAsync(
        Guid id,
        Guid arrival,
        HttpContext http,
        LogUploadHandler handler,
        ArrivedLogs arrivals,
        IDbContextFactory<WeldTraceDbContext> contexts
    )
    {
        var run = await handler.FindAsync(id, http.RequestAborted);
        if (run is null || arrivals.Find(run.MachineId, arrival) is not { ArrivedAt: not null } log)
        {
            return Refused(id, StagedLogs.Gone.Code);
        }

        var actor = await CurrentActor.GetAsync(contexts, http.User, http.RequestAborted);
        await using var content = arrivals.Open(log);
        var kept = await handler.HandleAsync(
            id,
            log.FileName,
            content,
            log.Length,
            actor,
            http.RequestAborted
        );
        return kept.IsAccepted
            ? Results.LocalRedirect(Routes.ReadLog(id, kept.Value.Id))
            : Refused(id, kept.Refusals[0].Code);
    }

    private static IResult Refused(Guid id, string code) =>
        Results.LocalRedirect(QueryHelpers.AddQueryString(Routes.BringLog(id), "refused", code));
}
