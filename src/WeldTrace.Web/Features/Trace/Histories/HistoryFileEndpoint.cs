using Microsoft.Net.Http.Headers;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Trace.Histories;

public static class HistoryFileEndpoint
{
    /// <summary>The file of an order, in parts where they are asked for (RFC 9110, 14); and how far an order is.</summary>
    public static void MapHistoryFiles(this IEndpointRouteBuilder endpoints)
    {
        endpoints
            .MapGet("/histories/{id:guid}/histories.zip", Send)
            .RequireAuthorization(Policies.OrderedHistories);
        endpoints
            .MapGet("/histories/{id:guid}/state", Tell)
            .RequireAuthorization(Policies.OrderedHistories);
    }

    private static IResult Send(Guid id, HistoryOrders orders, OrderFiles files)
    {
        if (orders.Find(id) is not { State: OrderState.Ready } order)
        {
            return Results.NotFound();
        }

        try
        {
            // Opened here, so that a file that is deleted meanwhile is still sent to its end.
            var file = files.Open(order);
            return file.Length == order.Bytes
                ? Results.File(
                    file,
                    "application/zip",
                    $"histories-{order.OrderedAt:yyyy-MM-dd}-{order.Serials.Count}.zip",
                    order.EndedAt,
                    new EntityTagHeaderValue($"\"{order.Sha256}\""),
                    enableRangeProcessing: true
                )
                : Close(file);
        }
        catch (IOException)
        {
            return Results.NotFound();
        }
    }

    private static IResult Close(Stream file)
    {
        file.Dispose();
        return Results.NotFound();
    }

    private static IResult Tell(Guid id, HistoryOrders orders) =>
        orders.Find(id) is { } order
            ? Results.Json(
                new
                {
                    Running = order.IsUnfinished,
                    State = order.StateWord,
                    Progress = new
                    {
                        Part = "histories",
                        order.Done,
                        Total = order.Serials.Count,
                    },
                }
            )
            : Results.NotFound();
}
