using WeldTrace.Domain.Equipment;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Features.Equipment;

/// <summary>How an instrument stands on a day, as a word with a shape.</summary>
public sealed record InstrumentStanding(Mark Mark, string Word)
{
    private const int DaysAhead = 30;

    public static InstrumentStanding Of(Instrument instrument, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        return instrument switch
        {
            { WithdrawnBecause: not null } => new(Mark.Ended, "out of use"),
            { Text.IsIndicationOnly: true } => new(Mark.Waived, "indication only"),
            { DueOn: null } => new(Mark.Failed, "never calibrated"),
            { Latest.IsWithinLimit: false } => new(Mark.Failed, "out of tolerance"),
            { DueOn: { } due } when today >= due => new(Mark.Failed, "calibration ran out"),
            { DueOn: { } due }
                when due.DayNumber - today.DayNumber is var left && left <= DaysAhead => new(
                Mark.Warning,
                FormattableString.Invariant($"{left} {(left == 1 ? "day" : "days")} left")
            ),
            _ => new(Mark.Passed, "calibrated"),
        };
    }
}
