using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.LedgerStore;

namespace WeldTrace.Web.Features.LedgerView.Check;

/// <summary>A check of the whole ledger: how far it is, or what it found.</summary>
/// <param name="StartedAt">UTC instant.</param>
/// <param name="StartedBy">Printed name of whoever asked for it.</param>
/// <param name="Progress">How far it is; null when it has ended.</param>
/// <param name="Report">What it found; null while it runs, and when it broke off.</param>
/// <param name="Fault">Why it broke off.</param>
public sealed record LedgerCheckState(
    DateTimeOffset StartedAt,
    string StartedBy,
    LedgerProgress? Progress,
    LedgerReport? Report = null,
    string? Fault = null
);

/// <summary>Runs one check at a time, beside the pages, and remembers the last one.</summary>
public sealed partial class LedgerCheckDesk(
    IDbContextFactory<WeldTraceDbContext> contexts,
    IHostApplicationLifetime lifetime,
    TimeProvider clock,
    ILogger<LedgerCheckDesk> logger
)
{
    private readonly Lock _change = new();
    private LedgerCheckState? _state;

    /// <summary>The check that runs, or the last one that ran since the start of the program.</summary>
    public LedgerCheckState? State
    {
        get
        {
            lock (_change)
            {
                return _state;
            }
        }
    }

    /// <summary>Starts a check unless one runs.</summary>
    /// <param name="printedName">Who asks for it.</param>
    public void Start(string printedName)
    {
        lock (_change)
        {
            if (_state?.Progress is not null)
            {
                return;
            }

            var begun = new LedgerProgress("entries", 0, 0);
            _state = new LedgerCheckState(clock.GetUtcNow(), printedName, begun);
        }

        _ = Task.Run(() => RunAsync(lifetime.ApplicationStopping));
    }

    private async Task RunAsync(CancellationToken stopping)
    {
        try
        {
            await using var db = await contexts.CreateDbContextAsync(stopping);
            var report = await db.CheckLedgerAsync(stopping, new Reporter(this));
            Change(s => s with { Progress = null, Report = report });
        }
        catch (Exception failure)
        {
            // Whoever waits for the answer must learn that there will be none.
            LogBrokenOff(failure);
            Change(s =>
                s with
                {
                    Progress = null,
                    Fault = "The check broke off before its end; start it again.",
                }
            );
        }
    }

    private void Change(Func<LedgerCheckState, LedgerCheckState> change)
    {
        lock (_change)
        {
            _state = change(_state!);
        }
    }

    [LoggerMessage(LogLevel.Error, "A check of the ledger broke off.")]
    private partial void LogBrokenOff(Exception failure);

    private sealed class Reporter(LedgerCheckDesk job) : IProgress<LedgerProgress>
    {
        public void Report(LedgerProgress value) => job.Change(s => s with { Progress = value });
    }
}
