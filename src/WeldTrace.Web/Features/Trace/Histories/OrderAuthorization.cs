using System.Security.Claims;
using Microsoft.AspNetCore.Authorization;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Trace.Histories;

/// <summary>Answers who may open the addresses of an order. Where there is no such order, the address says so itself.</summary>
public sealed class OrderAuthorization(IServiceProvider services)
    : AuthorizationHandler<OwnOrderRequirement>
{
    protected override Task HandleRequirementAsync(
        AuthorizationHandlerContext context,
        OwnOrderRequirement requirement
    )
    {
        ArgumentNullException.ThrowIfNull(context);
        // Asked for at the first request and not before: the orders are read from the data folder.
        var orders = services.GetRequiredService<HistoryOrders>();
        var order = orders.Find(IdIn(context.Resource));
        if (order is null || order.IsSeenBy(ActorOf(context.User)))
        {
            context.Succeed(requirement);
        }

        return Task.CompletedTask;
    }

    // The claims follow the records at each request: AccountClaims.ValidateAsync.
    private static Actor ActorOf(ClaimsPrincipal user) =>
        new(
            Guid.TryParse(user.FindFirstValue(AccountClaims.PersonId), out var id)
                ? id
                : Guid.Empty,
            "",
            [.. Enum.GetValues<Role>().Where(r => user.IsInRole(r.ToString()))]
        );

    // The server asks with the request, and the page's router once more with the route it has found.
    private static Guid IdIn(object? resource)
    {
        var values = resource switch
        {
            HttpContext http => http.Request.RouteValues.ToDictionary(),
            Microsoft.AspNetCore.Components.RouteData route => route.RouteValues.ToDictionary(),
            _ => [],
        };
        return values
            .Where(v => string.Equals(v.Key, "id", StringComparison.OrdinalIgnoreCase))
            .Select(v => v.Value)
            .FirstOrDefault() switch
        {
            Guid id => id,
            string text when Guid.TryParse(text, out var id) => id,
            _ => Guid.Empty,
        };
    }
}
