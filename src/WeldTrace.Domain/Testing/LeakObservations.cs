using WeldTrace.Engineering.Quantities;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Testing;

/// <summary>One reading of a pressure-decay test, with the digits as written down.</summary>
/// <param name="Seconds">Time since the first reading.</param>
/// <param name="GaugePressure">Gauge pressure in bar.</param>
/// <param name="GasTemperature">Temperature of the gas, or of the wall in its place, in °C.</param>
public sealed record LeakReading(int Seconds, Measured GaugePressure, Measured GasTemperature)
{
    /// <summary>Temperature of the room in °C; null when it wasn't read.</summary>
    public Measured? AmbientTemperature { get; init; }
}

/// <summary>What was read in a pressure-decay test.</summary>
/// <param name="Readings">Two or more readings in the order of time.</param>
/// <param name="AtmosphericPressure">Barometer in mbar.</param>
/// <param name="GaugeUncertainty">Standard uncertainty of a pressure reading, in mbar.</param>
/// <param name="TemperatureUncertainty">Standard uncertainty of a temperature reading, in K.</param>
/// <param name="VolumeUncertaintyPercent">Standard uncertainty of the test volume, in % of it.</param>
/// <param name="Instruments">Marks of gauge and thermometer; put in from the register.</param>
public sealed record DecayObservation(
    IReadOnlyList<LeakReading> Readings,
    Measured AtmosphericPressure,
    Measured GaugeUncertainty,
    Measured TemperatureUncertainty,
    Measured VolumeUncertaintyPercent,
    string Instruments
)
{
    /// <summary>Logger file from which the readings were taken, evenly spaced; null when they were read by eye.</summary>
    public LoggerFile? Log { get; init; }
}

/// <summary>What was seen in an immersion bubble test.</summary>
/// <param name="GaugePressure">Gauge pressure in bar.</param>
/// <param name="Liquid">Liquid.</param>
/// <param name="DepthOfLiquid">Depth of the observed seam below the surface, in mm.</param>
/// <param name="AtmosphericPressure">Barometer in mbar.</param>
/// <param name="ObservedSeconds">Time of observation.</param>
/// <param name="Bubbles">Bubbles counted; 0 when none.</param>
/// <param name="BubbleDiameter">Diameter of the bubbles, or the smallest that would have been seen, in mm.</param>
/// <param name="Places">Where bubbles rose; may be empty when there were none.</param>
/// <param name="Instruments">Mark of the gauge; put in from the register.</param>
public sealed record BubbleTest(
    Measured GaugePressure,
    string Liquid,
    Measured DepthOfLiquid,
    Measured AtmosphericPressure,
    int ObservedSeconds,
    int Bubbles,
    Measured BubbleDiameter,
    string Places,
    string Instruments
)
{
    /// <summary>Each place on the drawing of the vessel; null in tests recorded before places were marked.</summary>
    public IReadOnlyList<BubblePlace>? Marked { get; init; }

    /// <summary>Every place in words, the marked ones by their numbers on the drawing; null when none was told.</summary>
    public string? Where
    {
        get
        {
            IEnumerable<string> told =
            [
                .. (Marked ?? []).Select(
                    (p, i) =>
                        FormattableString.Invariant(
                            $"{i + 1}: {p.JointCode ?? "away from the welds"} at {p.Angle}"
                        )
                ),
                Places.Trim(),
            ];
            var text = string.Join("; ", told.Where(t => t.Length > 0));
            return text.Length == 0 ? null : text;
        }
    }
}

/// <summary>Where bubbles rose.</summary>
/// <param name="JointCode">Joint of the design; null away from the welds.</param>
/// <param name="Angle">Angle from the joint's reference mark in degrees, clockwise as seen from the shoulder side; 0 to 360.</param>
public sealed record BubblePlace(string? JointCode, Measured Angle);

/// <summary>What was read with a leak detector. All signals are in the unit that the detector shows.</summary>
/// <param name="Gas">Tracer gas.</param>
/// <param name="ConcentrationPercent">Share of tracer gas in the test gas, in %.</param>
/// <param name="ConcentrationUncertaintyPercent">Its standard uncertainty, in % of the test gas.</param>
/// <param name="GaugePressure">Gauge pressure in bar.</param>
/// <param name="DwellSeconds">Time under test gas before and during the measurement.</param>
/// <param name="CalibratedLeak">Rate of the calibrated leak, in Pa·m³/s.</param>
/// <param name="CalibratedLeakUncertainty">Its standard uncertainty, in Pa·m³/s.</param>
/// <param name="SignalOfCalibratedLeak">Signal with the calibrated leak open.</param>
/// <param name="Background">Signal without any leak.</param>
/// <param name="SignalOfVessel">Signal on the vessel.</param>
/// <param name="SignalUncertainty">Standard uncertainty of a signal.</param>
/// <param name="Places">Where the signal was greatest; empty when nowhere.</param>
/// <param name="Instruments">Marks of gauge, calibrated leak and detector; put in from the register.</param>
public sealed record TracerObservation(
    string Gas,
    Measured ConcentrationPercent,
    Measured ConcentrationUncertaintyPercent,
    Measured GaugePressure,
    int DwellSeconds,
    Measured CalibratedLeak,
    Measured CalibratedLeakUncertainty,
    Measured SignalOfCalibratedLeak,
    Measured Background,
    Measured SignalOfVessel,
    Measured SignalUncertainty,
    string Places,
    string Instruments
);

/// <summary>What was computed from a leak test, referred to 20 °C.</summary>
/// <param name="Rate">Leak rate.</param>
/// <param name="ExpandedUncertainty">Expanded uncertainty, k = 2.</param>
/// <param name="Smallest">Smallest rate that this test could have shown.</param>
/// <param name="Limit">Greatest permitted rate.</param>
public sealed record LeakResult(
    LeakRate Rate,
    LeakRate ExpandedUncertainty,
    LeakRate Smallest,
    LeakRate Limit
)
{
    /// <summary>Hold time in seconds that would decide an undecided decay test; null when the test is decided or no time would.</summary>
    public double? DecidingSeconds { get; init; }
}
