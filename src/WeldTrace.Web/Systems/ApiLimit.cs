using System.Threading.RateLimiting;
using Microsoft.AspNetCore.RateLimiting;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Systems;

/// <summary>How many requests a token may send: a program that loops leaves the server to the people.</summary>
internal static class ApiLimit
{
    public const string Policy = "systems";

    /// <summary>Requests of one token within a minute.</summary>
    public const int MostPerMinute = 120;

    private static readonly TimeSpan Window = TimeSpan.FromMinutes(1);

    public static IServiceCollection AddApiLimit(this IServiceCollection services) =>
        services.AddRateLimiter(options =>
        {
            options.AddPolicy(Policy, context => PartitionOf(context));
            options.OnRejected = RefuseAsync;
        });

    private static RateLimitPartition<string> PartitionOf(HttpContext context) =>
        RateLimitPartition.GetFixedWindowLimiter(
            context.User.FindFirst(SystemTokenScheme.TokenClaim)?.Value ?? "",
            _ => new FixedWindowRateLimiterOptions { PermitLimit = MostPerMinute, Window = Window }
        );

    private static async ValueTask RefuseAsync(
        OnRejectedContext rejected,
        CancellationToken cancellation
    )
    {
        var http = rejected.HttpContext;
        http.Response.Headers.RetryAfter = FormattableString.Invariant($"{Window.TotalSeconds:0}");
        await Results
            .Problem(
                $"More than {MostPerMinute} requests came with this token within a minute. Wait a minute, then send fewer.",
                statusCode: StatusCodes.Status429TooManyRequests
            )
            .ExecuteAsync(http);
    }
}
