using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Equipment;

/// <summary>Floor rules F5 and F13: an instrument that supplies acceptance values is calibrated on the day and suits the value.</summary>
public static class InstrumentRules
{
    /// <summary>Part of the range below which a pressure gauge is not read (common practice, no source).</summary>
    private const double LowestUsefulPart = 0.1;

    private const string Source = "NASA-STD-5006A GWR 18-20; NASA-STD-8739.12A 1.2.3, 4.1, 4.2.2";

    /// <summary>Why an instrument can't supply acceptance values on a day; null when it can.</summary>
    public static string? Against(Instrument instrument, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        var mark = instrument.Mark;
        return instrument switch
        {
            { WithdrawnBecause: { } reason } => $"{mark} is out of use: {reason.TrimEnd('.')}.",
            { Text.IsIndicationOnly: true } =>
                $"{mark} is for indication only and can't supply acceptance values; take another.",
            { Latest: null } =>
                $"{mark} has no calibration on file; enter its certificate or take another.",
            { Latest.IsWithinLimit: false } =>
                $"{mark} was out of tolerance at its last calibration; have it adjusted and calibrated again.",
            _ when today >= instrument.DueOn =>
                $"The calibration of {mark} ran out on {instrument.DueOn:yyyy-MM-dd}; have it calibrated or take another.",
            _ => null,
        };
    }

    /// <summary>The refusals when an instrument doesn't suit a test; nothing when it does.</summary>
    /// <param name="instrument">Instrument; null when none of that mark exists.</param>
    /// <param name="typedMark">What was typed.</param>
    /// <param name="kind">What it must measure.</param>
    /// <param name="largest">Largest value that it will have to read, in <paramref name="unit"/>; null when that isn't known.</param>
    /// <param name="unit">Unit of that value.</param>
    /// <param name="today">Day at the site.</param>
    /// <param name="field">Field that names it.</param>
    public static IEnumerable<Refusal> Check(
        Instrument? instrument,
        string? typedMark,
        InstrumentKind kind,
        double? largest,
        string unit,
        DateOnly today,
        string field
    )
    {
        if (instrument is null)
        {
            yield return new Refusal(
                "F13",
                $"No instrument is marked '{typedMark}'; scan it again, or have it entered under Equipment.",
                field,
                Source
            );
            yield break;
        }

        if (instrument.Measures != kind)
        {
            yield return new Refusal(
                "F13",
                $"{instrument.Mark} measures {Word(instrument.Measures)}, not {Word(kind)}.",
                field,
                Source
            );
        }

        if (Against(instrument, today) is { } against)
        {
            yield return new Refusal("F13", against, field, Source);
        }

        if (largest is { } value && instrument.Text.Unit == unit)
        {
            var upper = instrument.Text.Upper.InUnit();
            if (value > upper || value < upper * LowestUsefulPart)
            {
                yield return new Refusal(
                    "F13",
                    FormattableString.Invariant(
                        $"{instrument.Mark} reads up to {instrument.Text.Upper}; {value:0.##} {unit} must lie within its range and not below a tenth of it. Take a gauge that suits."
                    ),
                    field,
                    "Range: common practice, no source"
                );
            }
        }
    }

    /// <summary>The word for what an instrument measures.</summary>
    public static string Word(InstrumentKind kind) =>
        kind switch
        {
            InstrumentKind.Pressure => "pressure",
            InstrumentKind.Temperature => "temperature",
            InstrumentKind.Length => "length",
            InstrumentKind.Leak => "leak",
            InstrumentKind.Force => "force or torque",
            InstrumentKind.Mechanical => "mechanical test",
            InstrumentKind.Other => "something else",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind."),
        };
}
