using System.Diagnostics;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Trace.Histories;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Features.Trace.Histories;

/// <summary>Orders of histories in the demonstration.</summary>
internal static class DemoOrders
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    /// <summary>A vessel that is only begun: its history is made quickly.</summary>
    public const string Small = "NR10-0010";

    /// <summary>Histories that somebody has ordered and that are ready; ordered only if they are not there yet.</summary>
    public static async Task<HistoryOrder> ReadyAsync(
        DemoSite site,
        string signInName,
        params IReadOnlyList<string> serials
    )
    {
        var actor = await ActorAsync(site, signInName);
        var orders = site.Services.GetRequiredService<HistoryOrders>();
        return orders
                .SeenBy(actor)
                .FirstOrDefault(o =>
                    o.State == OrderState.Ready
                    && o.OrderedById == actor.PersonId
                    && o.Serials.SequenceEqual(serials)
                )
            ?? await AnewAsync(site, signInName, serials);
    }

    /// <summary>Orders histories and waits for their file.</summary>
    public static async Task<HistoryOrder> AnewAsync(
        DemoSite site,
        string signInName,
        params IReadOnlyList<string> serials
    )
    {
        var actor = await ActorAsync(site, signInName);
        var orders = site.Services.GetRequiredService<HistoryOrders>();
        var order = Accept.Value(orders.Place("Some vessels", serials, site.Address, actor));
        return await EndAsync(orders, order.Id, OrderState.Ready);
    }

    public static Task<Actor> ActorAsync(DemoSite site, string signInName) =>
        site.ReadAsync(async db =>
            (await db.People.AsNoTracking().SingleAsync(p => p.SignInName == signInName)).AsActor()
        );

    /// <summary>Waits until an order comes to a state.</summary>
    public static async Task<HistoryOrder> EndAsync(HistoryOrders orders, Guid id, OrderState state)
    {
        var begun = Stopwatch.GetTimestamp();
        while (orders.Find(id)!.State != state)
        {
            var order = orders.Find(id)!;
            Assert.True(
                order.IsUnfinished && Stopwatch.GetElapsedTime(begun) < Longest,
                $"The order is {order.StateWord}: {order.Fault}"
            );
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }

        return orders.Find(id)!;
    }
}
