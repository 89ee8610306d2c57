using System.Threading.RateLimiting;
using WeldTrace.Domain.Records;

namespace WeldTrace.Web.LogJudging;

/// <summary>
/// Process logs are read one after another in the order in which they were brought: one of 2 GB takes all processors and its samples
/// stay in memory until they are stored, and the pages of everybody else must stay quick.
/// </summary>
public sealed class LogIntake : IDisposable
{
    /// <summary>Logs that may wait while one is read.</summary>
    public const int MostWaiting = 40;

    private readonly ConcurrencyLimiter _turns = new(
        new()
        {
            PermitLimit = 1,
            QueueLimit = MostWaiting,
            QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
        }
    );

    /// <summary>What is said to whoever finds the line full.</summary>
    public static Refusal Full { get; } =
        new(
            "line-full",
            $"{MostWaiting} logs wait to be read already. This file is kept here: press the button again in a minute."
        );

    /// <summary>Waits for the turn, which lasts until what is given back is disposed of; not acquired when the line is full.</summary>
    public ValueTask<RateLimitLease> TakeTurnAsync(CancellationToken cancellation) =>
        _turns.AcquireAsync(1, cancellation);

    public void Dispose() => _turns.Dispose();
}
