namespace WeldTrace.Domain.Equipment;

/// <summary>How an instrument's calibration stood on a day in the past.</summary>
/// <param name="Calibration">The last one up to that day.</param>
/// <param name="Against">Why nothing measured on that day can rest on it; null when it can.</param>
public sealed record CalibrationOnDay(Calibration Calibration, string? Against)
{
    /// <summary>The calibration of an instrument on a day; null when there was none yet.</summary>
    /// <param name="instrument">Instrument with all its calibrations, those after the day included.</param>
    /// <param name="day">Day at the site.</param>
    public static CalibrationOnDay? Of(Instrument instrument, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        var calibration = instrument.Calibrations.LastOrDefault(c => c.On <= day);
        if (calibration is null)
        {
            return null;
        }

        var next = instrument.Calibrations.FirstOrDefault(c => c.On > day);
        return new(
            calibration,
            day >= calibration.DueOn
                    ? $"The calibration of {instrument.Mark} had run out on {calibration.DueOn:yyyy-MM-dd}."
                : !calibration.IsWithinLimit
                    ? $"{instrument.Mark} had been found out of tolerance on {calibration.On:yyyy-MM-dd}."
                : next is { IsWithinLimit: false }
                    ? $"{instrument.Mark} was within its calibration, but the next one, of {next.On:yyyy-MM-dd}, found it out of tolerance."
                : null
        );
    }
}
