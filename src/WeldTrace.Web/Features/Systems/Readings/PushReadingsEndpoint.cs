using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Systems.Readings;

public static class PushReadingsEndpoint
{
    public const string Pattern = "/api/vessels/{serial}/steps/{sequence:int}/readings";

    public static void MapPushReadings(this IEndpointRouteBuilder endpoints) =>
        endpoints
            .MapPost(Pattern, PushAsync)
            .RequireAuthorization(Policies.PushingReadings)
            .RequireRateLimiting(ApiLimit.Policy)
            .WithMetadata(new RequestSizeLimitAttribute(PressureLog.MostBytes))
            .WithSummary("Sends the readings of a bench: one hold of a pressure test, or a pressure decay.")
            .WithDescription(
                "The body is the logger's CSV with time, gauge pressure and vessel temperature. With a stage the hold of the test under way is recorded and judged; sent twice it is recorded once. Without one the readings wait for the inspector's leak test."
            )
            .Accepts<string>("text/csv")
            .Produces<TakenReadings>()
            .ProducesProblem(StatusCodes.Status401Unauthorized)
            .ProducesProblem(StatusCodes.Status403Forbidden)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status409Conflict)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .ProducesProblem(StatusCodes.Status429TooManyRequests);

    private static async Task<IResult> PushAsync(
        string serial,
        int sequence,
        int? stage,
        string? name,
        HttpContext http,
        PushReadingsHandler handler,
        IDbContextFactory<WeldTraceDbContext> contexts
    )
    {
        using var body = new MemoryStream();
        try
        {
            await http.Request.Body.CopyToAsync(body, http.RequestAborted);
        }
        catch (BadHttpRequestException tooLarge)
        {
            return Results.Problem(
                $"The log is larger than {PressureLog.MostBytes / 1048576} MB. Log at a lower rate, or send one file for each stage.",
                statusCode: tooLarge.StatusCode
            );
        }

        await using var db = await contexts.CreateDbContextAsync(http.RequestAborted);
        var id = Guid.Parse(http.User.FindFirst(SystemTokenScheme.TokenClaim)!.Value);
        var token = await db
            .SystemTokens.AsNoTracking()
            .SingleAsync(t => t.Id == id, http.RequestAborted);
        var log = new FormFile(body, 0, body.Length, "log", name ?? "readings.csv");
        var taken = await handler.HandleAsync(
            token,
            serial,
            sequence,
            stage,
            log,
            http.RequestAborted
        );
        return taken.IsAccepted ? Results.Ok(taken.Value) : ApiRefusal.Of(taken.Refusals);
    }
}
