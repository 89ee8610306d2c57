using System.Globalization;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Quantities;
using PressureStage = WeldTrace.Domain.VesselDesigns.PressureStage;

namespace WeldTrace.Web.Features.Testing.Logs;

/// <summary>Takes the readings that a test needs from the samples of a logger.</summary>
public static class LoggedReadings
{
    /// <summary>Samples of a decay test that are kept as readings, evenly spaced; all of them stay in the file.</summary>
    public const int MostReadings = 121;

    /// <summary>The readings of a hold: both its ends, the highest pressure and the fastest rise on the way.</summary>
    /// <param name="log">Log of the stage.</param>
    /// <param name="stage">Stage of the ladder.</param>
    /// <param name="plan">Pressures of the design.</param>
    /// <param name="field">Field that the file came in.</param>
    public static Outcome<StageReading> Hold(
        BroughtLog log,
        PressureStage stage,
        PressurePlan plan,
        string field
    )
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(stage);
        ArgumentNullException.ThrowIfNull(plan);
        var least = plan.Target(stage) * (1 - (double)plan.TargetTolerance);
        var hold = log.Trace.FindHold(
            least,
            least - plan.AllowedHoldDrop,
            plan.AllowedHoldDrop * 0.25,
            TimeSpan.FromSeconds(stage.HoldSeconds)
        );
        if (hold is null)
        {
            return new Refusal(
                "F15",
                FormattableString.Invariant(
                    $"The log never shows a hold at {least.Bar:0.##} bar or more; it goes to {log.Trace.Highest.Gauge.Bar:0.##} bar. Bring the log of this stage."
                ),
                field
            );
        }

        if (hold.Begin.Medium is not { } first || hold.End.Medium is not { } last)
        {
            return NoTemperature(field);
        }

        return new StageReading(
            Bar(hold.Begin.Gauge),
            Celsius(first),
            Bar(hold.End.Gauge),
            Celsius(last),
            (int)Math.Floor(hold.Held.TotalSeconds),
            null
        )
        {
            HighestPressure = Bar(hold.Highest),
            FastestRise = Bar(hold.FastestRise),
            Log = log.File,
        };
    }

    /// <summary>Highest pressure of a burst and the rise within the minute before it.</summary>
    public static (Measured Pressure, Measured Rise) Burst(BroughtLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        var samples = log.Trace.Samples;
        var highest = log.Trace.Highest;
        var before = samples.LastOrDefault(
            s => s.Time <= highest.Time - TimeSpan.FromMinutes(1),
            samples[0]
        );
        var minutes = Math.Max((highest.Time - before.Time).TotalMinutes, 1);
        return (Bar(highest.Gauge), Bar((highest.Gauge - before.Gauge) / minutes));
    }

    /// <summary>Evenly spaced readings of a decay test, first and last sample included.</summary>
    public static Outcome<List<LeakReading>> Decay(BroughtLog log, string field)
    {
        ArgumentNullException.ThrowIfNull(log);
        var samples = log.Trace.Samples;
        if (samples.Any(s => s.Medium is null))
        {
            return NoTemperature(field);
        }

        var count = Math.Min(MostReadings, samples.Count);
        var indices = Enumerable
            .Range(0, count)
            .Select(i => (int)((long)i * (samples.Count - 1) / (count - 1)));
        return indices
            .Select(i => samples[i])
            .DistinctBy(s => (int)Math.Round(s.Time.TotalSeconds))
            .Select(s => new LeakReading(
                (int)Math.Round(s.Time.TotalSeconds),
                Of(s.Gauge.Bar, 5, "bar"),
                Celsius(s.Medium!.Value)
            )
            {
                AmbientTemperature = s.Ambient is { } room ? Celsius(room) : null,
            })
            .ToList();
    }

    private static Refusal NoTemperature(string field) =>
        new(
            "log",
            "The log has no temperature of the vessel, so nothing can be compensated. Name a column 'Vessel temperature [°C]' and log the test anew, or type the readings in.",
            field
        );

    // A logger that writes hundredths is not made to look as if it wrote more.
    private static Measured Bar(Pressure pressure) =>
        new(pressure.Bar.ToString("0.00##", CultureInfo.InvariantCulture), "bar");

    private static Measured Celsius(Temperature temperature) =>
        Of(temperature.DegreesCelsius, 2, "°C");

    private static Measured Of(double value, int decimals, string unit) =>
        new(
            Math.Round(value, decimals).ToString("F" + decimals, CultureInfo.InvariantCulture),
            unit
        );
}
