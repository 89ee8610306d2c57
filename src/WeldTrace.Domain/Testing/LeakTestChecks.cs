using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Domain.Testing;

/// <summary>Readings that can't be true, or can't serve the design's test.</summary>
internal static class LeakTestChecks
{
    private const double ShareOfTestPressure = 0.98;

    public static void Decay(Checks checks, DecayObservation seen, PressurePlan plan)
    {
        checks.That(
            seen.Readings.Count >= 2,
            "readings",
            "Enter at least two readings.",
            nameof(seen.Readings)
        );
        Reading.Between(
            checks,
            seen.AtmosphericPressure,
            800,
            1100,
            "Barometer",
            nameof(seen.AtmosphericPressure)
        );
        Reading.Between(
            checks,
            seen.GaugeUncertainty,
            0.001,
            1000,
            "Standard uncertainty of the gauge",
            nameof(seen.GaugeUncertainty)
        );
        Reading.Between(
            checks,
            seen.TemperatureUncertainty,
            0,
            10,
            "Standard uncertainty of the thermometer",
            nameof(seen.TemperatureUncertainty)
        );
        Reading.Between(
            checks,
            seen.VolumeUncertaintyPercent,
            0,
            50,
            "Standard uncertainty of the volume",
            nameof(seen.VolumeUncertaintyPercent)
        );
        CheckReadings(checks, seen.Readings, plan);
        if (seen.Readings.Count >= 2 && checks.AllHold)
        {
            Pressurised(checks, seen.Readings[0].GaugePressure.InUnit(), plan, "The first reading");
            Observed(checks, seen.Readings[^1].Seconds - seen.Readings[0].Seconds, plan);
        }
    }

    public static void Bubbles(Checks checks, BubbleTest seen, PressurePlan plan)
    {
        Reading.Between(
            checks,
            seen.GaugePressure,
            0,
            plan.Meop.Bar * 3,
            "Gauge pressure",
            nameof(seen.GaugePressure)
        );
        Reading.Between(
            checks,
            seen.DepthOfLiquid,
            0,
            20000,
            "Depth below the surface",
            nameof(seen.DepthOfLiquid)
        );
        Reading.Between(
            checks,
            seen.AtmosphericPressure,
            800,
            1100,
            "Barometer",
            nameof(seen.AtmosphericPressure)
        );
        Reading.Between(
            checks,
            seen.BubbleDiameter,
            0.1,
            20,
            "Bubble diameter",
            nameof(seen.BubbleDiameter)
        );
        CheckSeen(checks, seen);
        if (checks.AllHold)
        {
            Pressurised(checks, seen.GaugePressure.InUnit(), plan, "The gauge");
            Observed(checks, seen.ObservedSeconds, plan);
        }
    }

    private static void CheckReadings(
        Checks checks,
        IReadOnlyList<LeakReading> readings,
        PressurePlan plan
    )
    {
        for (var i = 0; i < readings.Count; i++)
        {
            var (reading, where) = (readings[i], $"Reading {i + 1}");
            Reading.Between(
                checks,
                reading.GaugePressure,
                0,
                plan.Meop.Bar * 3,
                $"{where}: gauge pressure",
                "Readings"
            );
            Reading.Between(
                checks,
                reading.GasTemperature,
                -60,
                120,
                $"{where}: temperature",
                "Readings"
            );
            checks.That(
                i == 0 || reading.Seconds > readings[i - 1].Seconds,
                "time",
                $"{where}: its time isn't after the reading before; put them in order.",
                "Readings"
            );
        }
    }

    private static void CheckSeen(Checks checks, BubbleTest seen) =>
        checks
            .Text(seen.Liquid, 40, "Name the liquid", nameof(seen.Liquid))
            .That(
                seen.Bubbles is >= 0 and <= 100000,
                "bubbles",
                "Count the bubbles, 0 or more.",
                nameof(seen.Bubbles)
            )
            .That(
                seen.Places.Length <= TestRecord.LongestText,
                "places",
                $"Keep the places within {TestRecord.LongestText} characters.",
                nameof(seen.Places)
            )
            .That(
                seen.Bubbles == 0 || !string.IsNullOrWhiteSpace(seen.Places),
                "places",
                "Say where the bubbles rose.",
                nameof(seen.Places)
            );

    private static void Pressurised(Checks checks, double bar, PressurePlan plan, string what) =>
        checks.That(
            bar >= plan.LeakTestPressure.Bar * ShareOfTestPressure,
            "F15",
            FormattableString.Invariant(
                $"{what} shows {bar:0.##} bar; the design tests at {plan.LeakTestPressure.Bar:0.##} bar. Fill to the test pressure and start again."
            ),
            "GaugePressure"
        );

    private static void Observed(Checks checks, int seconds, PressurePlan plan) =>
        checks.That(
            seconds >= plan.LeakHoldSeconds,
            "F15",
            $"Observed for {seconds} s; the design asks for {plan.LeakHoldSeconds} s at least. Go on observing.",
            "ObservedSeconds"
        );
}
