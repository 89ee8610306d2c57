using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Features.Trace.Histories;

public enum OrderState
{
    /// <summary>In the line.</summary>
    Waiting,

    /// <summary>Its bundles are being made.</summary>
    Making,

    /// <summary>Its file may be fetched.</summary>
    Ready,

    /// <summary>Somebody ended it before it was ready.</summary>
    Cancelled,

    /// <summary>It could not be made.</summary>
    Failed,

    /// <summary>It was ready, and its file was deleted since.</summary>
    Deleted,
}

/// <summary>Somebody's order of the histories of several vessels. It is no record of the site: it changes nothing that is kept.</summary>
public sealed record HistoryOrder
{
    public required Guid Id { get; init; }

    /// <summary>What the vessels have in common.</summary>
    public required string Title { get; init; }

    /// <summary>Vessels in the order in which they are put in.</summary>
    public required IReadOnlyList<string> Serials { get; init; }

    public required Guid OrderedById { get; init; }

    public required string OrderedBy { get; init; }

    public required DateTimeOffset OrderedAt { get; init; }

    /// <summary>The site as whoever ordered it reaches it; printed on the papers.</summary>
    public required Uri Site { get; init; }

    public OrderState State { get; init; }

    /// <summary>Vessels whose bundle is in the file.</summary>
    public int Done { get; init; }

    /// <summary>How often its making was begun; more than once when the program ended in the middle.</summary>
    public int Attempts { get; init; }

    /// <summary>When it came to its last state.</summary>
    public DateTimeOffset? EndedAt { get; init; }

    /// <summary>When its file, and later the order itself, is deleted.</summary>
    public DateTimeOffset? KeptUntil { get; init; }

    /// <summary>Length of the file in bytes.</summary>
    public long Bytes { get; init; }

    /// <summary>SHA-256 of the file, lower-case hexadecimal; null while there is none.</summary>
    public string? Sha256 { get; init; }

    /// <summary>Why it could not be made, in a sentence.</summary>
    public string? Fault { get; init; }

    public bool IsUnfinished => State is OrderState.Waiting or OrderState.Making;

    public string StateWord =>
        State switch
        {
            OrderState.Waiting => "waiting",
            OrderState.Making => "being made",
            OrderState.Ready => "ready",
            OrderState.Cancelled => "cancelled",
            OrderState.Failed => "not made",
            OrderState.Deleted => "deleted",
            _ => throw new ArgumentOutOfRangeException(nameof(State), State, null),
        };

    public Mark Mark =>
        State switch
        {
            OrderState.Waiting => Mark.Waiting,
            OrderState.Making => Mark.InProgress,
            OrderState.Ready => Mark.Passed,
            OrderState.Cancelled or OrderState.Deleted => Mark.Ended,
            OrderState.Failed => Mark.Failed,
            _ => throw new ArgumentOutOfRangeException(nameof(State), State, null),
        };

    /// <summary>Whoever ordered it sees it, and those who answer for what leaves the house and for the site's disk.</summary>
    public bool IsSeenBy(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return actor.PersonId == OrderedById
            || actor.HasAny(Role.QualityManager, Role.Administrator);
    }

    /// <summary>The order in its last state.</summary>
    internal HistoryOrder End(OrderState state, DateTimeOffset now) =>
        this with
        {
            State = state,
            EndedAt = now,
            KeptUntil =
                now
                + (
                    state == OrderState.Ready
                        ? HistorySettings.FileKeptFor
                        : HistorySettings.OrderKeptFor
                ),
        };

    /// <summary>
    /// The order after a start of the program. What was being made is begun anew; if that ended the program each time, it
    /// is given up.
    /// </summary>
    /// <param name="isThere">Whether its whole file is in the data folder.</param>
    /// <param name="now">Now.</param>
    internal HistoryOrder GoOn(bool isThere, DateTimeOffset now) =>
        State switch
        {
            OrderState.Making when Attempts < HistorySettings.MostAttempts => this with
            {
                State = OrderState.Waiting,
                Done = 0,
            },
            OrderState.Making => End(OrderState.Failed, now) with
            {
                Fault =
                    "The site stopped each time these histories were being made. Order fewer vessels at once.",
            },
            OrderState.Ready when !isThere => End(OrderState.Failed, now) with
            {
                Fault = "The file is not in the data folder any more. Order it again.",
            },
            _ => this,
        };
}
