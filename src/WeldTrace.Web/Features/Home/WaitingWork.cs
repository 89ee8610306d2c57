using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Features.Home;

/// <summary>How soon something is to be done; the first is the most urgent.</summary>
public enum Urgency
{
    /// <summary>Work stands still until it is done.</summary>
    Stopped,

    /// <summary>A signature is awaited.</summary>
    ToSign,

    /// <summary>Due within a week.</summary>
    Week,

    /// <summary>Due within a month.</summary>
    Month,

    /// <summary>May be done now.</summary>
    Ready,

    /// <summary>Due within a quarter of a year.</summary>
    Quarter,
}

/// <summary>Something that waits for a person.</summary>
/// <param name="Urgency">How soon.</param>
/// <param name="Mark">Shape of its urgency.</param>
/// <param name="Word">Its urgency in a word.</param>
/// <param name="Title">What to do.</param>
/// <param name="Address">Where.</param>
public sealed record WaitingWork(
    Urgency Urgency,
    Mark Mark,
    string Word,
    string Title,
    string Address
)
{
    private const int WeekDays = 7;
    private const int MonthDays = 30;

    /// <summary>Days ahead from which something that ends is shown.</summary>
    public const int QuarterDays = 90;

    /// <summary>Something that ends on a day; null when that is more than a quarter of a year away.</summary>
    /// <param name="title">What to do.</param>
    /// <param name="address">Where.</param>
    /// <param name="ends">First day on which it no longer holds.</param>
    /// <param name="today">Day at the site.</param>
    public static WaitingWork? Ending(string title, string address, DateOnly ends, DateOnly today)
    {
        var left = ends.DayNumber - today.DayNumber;
        var urgency =
            left <= 0 ? Urgency.Stopped
            : left <= WeekDays ? Urgency.Week
            : left <= MonthDays ? Urgency.Month
            : Urgency.Quarter;
        var word =
            left <= 0
                ? "ran out"
                : FormattableString.Invariant($"{left} {(left == 1 ? "day" : "days")} left");
        return left > QuarterDays
            ? null
            : new(urgency, left <= 0 ? Mark.Failed : Mark.Warning, word, title, address);
    }
}
