namespace WeldTrace.ProcessLogs;

/// <summary>How the date of a time stamp is written.</summary>
public enum TimeStampDate
{
    /// <summary>A time of day alone.</summary>
    None,

    /// <summary>2026-03-01.</summary>
    YearMonthDay,

    /// <summary>2026/03/01.</summary>
    YearMonthDaySlashes,

    /// <summary>01.03.2026.</summary>
    DayMonthYear,
}

/// <summary>How a time stamp of a calendar is written.</summary>
/// <param name="Date">Its date.</param>
/// <param name="Between">T or a space between date and time.</param>
/// <param name="Decimals">Decimals of the second, 0 to 9.</param>
/// <param name="Mark">Decimal mark of the second.</param>
/// <param name="Zone">Z, an offset from UTC, or nothing.</param>
public readonly record struct TimeStampForm(
    TimeStampDate Date,
    char Between,
    int Decimals,
    char Mark,
    string Zone
);

/// <summary>The first time stamp of a log whose time is written as date and time; its samples count from there.</summary>
/// <param name="Nanoseconds">Since 1970-01-01 UTC; from midnight when the stamps hold no date, and by the clock of the machine when they hold no offset.</param>
/// <param name="Form">How it is written.</param>
public sealed record LogStart(long Nanoseconds, TimeStampForm Form);
