using System.Security.Claims;
using Microsoft.AspNetCore.Authorization;
using WeldTrace.Domain.People;
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
        var person = context.User.FindFirstValue(AccountClaims.PersonId);
        if (
            order is null
            || person == order.OrderedById.ToString("D")
            || context.User.IsInRole(nameof(Role.QualityManager))
            || context.User.IsInRole(nameof(Role.Administrator))
        )
        {
            context.Succeed(requirement);
        }

        return Task.CompletedTask;
    }

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
