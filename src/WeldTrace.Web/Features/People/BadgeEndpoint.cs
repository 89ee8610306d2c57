using Microsoft.AspNetCore.Antiforgery;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.People;

public static class BadgeEndpoint
{
    public static void MapBadges(this IEndpointRouteBuilder endpoints) =>
        endpoints
            .MapPost("/people/{id:guid}/badge", MakeAsync)
            .RequireAuthorization(Policies.Accounts)
            .WithMetadata(new RequireAntiforgeryTokenAttribute());

    // The answer is the only copy of the badge.
    private static async Task<IResult> MakeAsync(
        Guid id,
        HttpContext http,
        BadgeHandler handler,
        IDbContextFactory<WeldTraceDbContext> contexts
    )
    {
        var actor = await CurrentActor.GetAsync(contexts, http.User, http.RequestAborted);
        var badge = await handler.MakeAsync(id, actor, http.RequestAborted);
        return badge.IsAccepted ? Results.File(badge.Value!, "application/pdf", "badge.pdf")
            : badge.Refusals.Any(r => r.Code == "person") ? Results.NotFound()
            : Results.Forbid();
    }
}
