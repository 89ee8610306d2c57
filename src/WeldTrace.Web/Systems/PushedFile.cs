using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Access;
using WeldTrace.Persistence;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Systems;

/// <summary>A file that another system sent as the body of its request.</summary>
/// <param name="Token">Token of the system.</param>
/// <param name="Log">The file, as a form would hand it in.</param>
public sealed record PushedFile(SystemToken Token, IFormFile Log)
{
    private const long Megabyte = 1024 * 1024;

    /// <summary>Lets a system with a token for it send a file to an endpoint, and describes its answers.</summary>
    public static void TakeFile<T>(RouteHandlerBuilder endpoint, long mostBytes) =>
        endpoint
            .RequireAuthorization(Policies.PushingReadings)
            .RequireRateLimiting(ApiLimit.Policy)
            .WithMetadata(new Microsoft.AspNetCore.Mvc.RequestSizeLimitAttribute(mostBytes))
            .Accepts<string>("text/csv")
            .Produces<T>()
            .ProducesProblem(StatusCodes.Status401Unauthorized)
            .ProducesProblem(StatusCodes.Status403Forbidden)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status409Conflict)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .ProducesProblem(StatusCodes.Status429TooManyRequests);

    /// <summary>Reads the body and does with it what the endpoint does; a body that is too long is refused in words.</summary>
    public static async Task<IResult> TakeAsync(
        HttpContext http,
        string? name,
        long mostBytes,
        Func<PushedFile, Task<IResult>> take
    )
    {
        ArgumentNullException.ThrowIfNull(http);
        ArgumentNullException.ThrowIfNull(take);
        using var body = new MemoryStream();
        try
        {
            await http.Request.Body.CopyToAsync(body, http.RequestAborted);
        }
        catch (BadHttpRequestException refused)
        {
            return Results.Problem(
                $"The file did not arrive whole, or has more than {mostBytes / Megabyte} MB. Log at a lower rate, or send one file for each stage.",
                statusCode: refused.StatusCode
            );
        }

        var contexts = http.RequestServices.GetRequiredService<
            IDbContextFactory<WeldTraceDbContext>
        >();
        await using var db = await contexts.CreateDbContextAsync(http.RequestAborted);
        var id = Guid.Parse(http.User.FindFirst(SystemTokenScheme.TokenClaim)!.Value);
        var token = await db
            .SystemTokens.AsNoTracking()
            .SingleAsync(t => t.Id == id, http.RequestAborted);
        return await take(
            new(token, new FormFile(body, 0, body.Length, "log", name ?? "readings.csv"))
        );
    }
}
