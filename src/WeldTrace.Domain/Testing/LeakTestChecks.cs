using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Domain.Testing;

/// <summary>Readings that can't be true, or can't serve the design's test.</summary>
internal static class LeakTestChecks
{
    private const double ShareOfTestPressure = 0.98;
    private const double LargestJumpKelvin = 2;

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

    /// <summary>F14: every leak test is done with gas.</summary>
    public static void Cautions(Checks checks, TestFacts facts) =>
        checks.That(
            facts.CautionsRead,
            "F14",
            "Confirm that the stored energy was read and the stand-off kept before the vessel was filled.",
            nameof(facts.CautionsRead)
        );

    public static void Bubbles(Checks checks, BubbleTest seen, DesignContent design)
    {
        var plan = design.Pressures;
        CheckPlaces(checks, seen, design);
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
            SensorStays(checks, i == 0 ? null : readings[i - 1], reading, where);
            checks.That(
                i == 0 || reading.Seconds > readings[i - 1].Seconds,
                "time",
                $"{where}: its time isn't after the reading before; put them in order.",
                "Readings"
            );
        }
    }

    /// <summary>
    /// A temperature that jumps by more than 2 K while the pressure follows by less than a third of what the gas law asks shows a sensor
    /// that left its place (common practice, no source). Compensation by it would hide or feign a leak.
    /// </summary>
    private static void SensorStays(
        Checks checks,
        LeakReading? before,
        LeakReading reading,
        string where
    )
    {
        if (before is null || !checks.AllHold)
        {
            return;
        }

        var jump = reading.GasTemperature.InUnit() - before.GasTemperature.InUnit();
        var absolute = before.GaugePressure.InUnit() + 1;
        var asked = absolute * jump / (before.GasTemperature.InUnit() + 273.15);
        var followed = reading.GaugePressure.InUnit() - before.GaugePressure.InUnit();
        checks.That(
            Math.Abs(jump) <= LargestJumpKelvin || followed / asked >= 1.0 / 3,
            "sensor",
            FormattableString.Invariant(
                $"{where}: the temperature changed by {jump:0.#} K and the pressure did not follow ({followed:0.###} bar; {asked:0.###} bar would be expected). The sensor seems to have left the vessel or the bath; put it back and begin again."
            ),
            "Readings"
        );
    }

    private static void CheckPlaces(Checks checks, BubbleTest seen, DesignContent design)
    {
        foreach (var (place, row) in (seen.Marked ?? []).Select((p, i) => (p, i + 1)))
        {
            checks.That(
                place.JointCode is null || design.Joint(place.JointCode) is not null,
                "places",
                $"Place {row}: the design has no joint '{place.JointCode}'.",
                nameof(seen.Marked)
            );
            Reading.Between(
                checks,
                place.Angle,
                0,
                360,
                $"Place {row}: angle",
                nameof(seen.Marked)
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
                seen.Bubbles == 0
                    || seen.Marked?.Count > 0
                    || !string.IsNullOrWhiteSpace(seen.Places),
                "places",
                "Say where the bubbles rose, or mark it on the drawing.",
                nameof(seen.Places)
            );

    public static void Pressurised(Checks checks, double bar, PressurePlan plan, string what) =>
        checks.That(
            bar >= plan.LeakTestPressure.Bar * ShareOfTestPressure,
            "F15",
            FormattableString.Invariant(
                $"{what} shows {bar:0.##} bar; the design tests at {plan.LeakTestPressure.Bar:0.##} bar. Fill to the test pressure and start again."
            ),
            "GaugePressure"
        );

    public static void Observed(
        Checks checks,
        int seconds,
        PressurePlan plan,
        string field = "ObservedSeconds"
    ) =>
        checks.That(
            seconds >= plan.LeakHoldSeconds,
            "F15",
            $"Observed for {seconds} s; the design asks for {plan.LeakHoldSeconds} s at least. Go on observing.",
            field
        );
}
