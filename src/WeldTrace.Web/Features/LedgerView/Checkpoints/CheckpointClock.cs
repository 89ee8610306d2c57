using Npgsql;
using WeldTrace.Persistence.LedgerStore;

namespace WeldTrace.Web.Features.LedgerView.Checkpoints;

/// <summary>Takes a checkpoint at the start and then in each period in which the ledger grew.</summary>
public sealed partial class CheckpointClock(
    IServiceProvider services,
    CheckpointSettings settings,
    TimeProvider clock,
    ILogger<CheckpointClock> logger
) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(settings.Period, clock);
        do
        {
            await TakeAsync(stoppingToken);
        } while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    private async Task TakeAsync(CancellationToken stopping)
    {
        try
        {
            // Resolved at the first turn: the database is not there before the services ahead of this one have started.
            await services.GetRequiredService<CheckpointDesk>().TakeAsync(stopping);
        }
        catch (BrokenLedgerException broken)
        {
            LogBroken(broken);
        }
        catch (Exception failure)
            when (failure is NpgsqlException or InvalidOperationException
                && !stopping.IsCancellationRequested
            )
        {
            LogFailed(failure);
        }
    }

    [LoggerMessage(LogLevel.Critical, "The ledger was changed behind the program's back.")]
    private partial void LogBroken(Exception broken);

    [LoggerMessage(LogLevel.Warning, "No checkpoint was taken; the next period tries again.")]
    private partial void LogFailed(Exception failure);
}
