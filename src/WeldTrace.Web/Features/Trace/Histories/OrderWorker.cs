namespace WeldTrace.Web.Features.Trace.Histories;

/// <summary>Makes the orders of the line, one at a time, and deletes those whose time is over.</summary>
public sealed partial class OrderWorker(IServiceProvider services, ILogger<OrderWorker> log)
    : BackgroundService
{
    private const int DiskFull = 28;
    private static readonly TimeSpan Pause = TimeSpan.FromMinutes(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                // Asked for here and not in the constructor: the data folder is ours only once the database has started.
                await LookAsync(services.GetRequiredService<HistoryOrders>(), stoppingToken);
            }
            catch (Exception failure) when (failure is not OperationCanceledException)
            {
                // A full disk on which no state can be written down, for instance: it is tried again, and the site goes on.
                LogNotMade(failure);
                await Task.Delay(Pause, stoppingToken);
            }
        }
    }

    private async Task LookAsync(HistoryOrders orders, CancellationToken stopping)
    {
        orders.DeleteOld();
        if (orders.Begin(stopping) is var (order, token))
        {
            await MakeAsync(orders, order, token, stopping);
        }
        else
        {
            await orders.WaitAsync(Pause, stopping);
        }
    }

    private async Task MakeAsync(
        HistoryOrders orders,
        HistoryOrder order,
        CancellationToken cancellation,
        CancellationToken stopping
    )
    {
        try
        {
            await using var scope = services.CreateAsyncScope();
            var (bytes, sha256) = await scope
                .ServiceProvider.GetRequiredService<CollectionDesk>()
                .MakeAsync(order, done => orders.Report(order.Id, done), cancellation);
            if (!orders.Offer(order.Id, bytes, sha256))
            {
                orders.GiveUp(order.Id, "");
            }
        }
        catch (OrderFaultException fault)
        {
            orders.GiveUp(order.Id, fault.Message);
        }
        catch (Exception failure)
            when (failure is OperationCanceledException || cancellation.IsCancellationRequested)
        {
            // The database reports a cancelled query in its own way at times.
            End(orders, order, stopping);
        }
        catch (IOException failure) when ((failure.HResult & 0xFFFF) == DiskFull)
        {
            orders.GiveUp(order.Id, OrderRules.NoRoom.Sentence);
        }
        catch (Exception failure)
        {
            // Whoever waits must learn that there will be no file.
            LogNotMade(failure);
            orders.GiveUp(
                order.Id,
                "The histories could not be made; the log of the site says why. Order them again, or tell whoever runs the site."
            );
        }
    }

    private static void End(HistoryOrders orders, HistoryOrder order, CancellationToken stopping)
    {
        if (stopping.IsCancellationRequested)
        {
            orders.PutBack(order.Id);
        }
        else
        {
            orders.GiveUp(order.Id, "");
        }
    }

    [LoggerMessage(LogLevel.Error, "An order of histories was not made.")]
    private partial void LogNotMade(Exception failure);
}
