using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.LeakTesting;

/// <summary>One reading of a pressure-decay test.</summary>
/// <param name="Time">Time since the first reading or any other fixed instant.</param>
/// <param name="AbsolutePressure">Absolute gas pressure, above zero.</param>
/// <param name="GasTemperature">Temperature that represents the gas, above zero kelvin.</param>
public readonly record struct DecayReading(
    TimeSpan Time,
    Pressure AbsolutePressure,
    Temperature GasTemperature
);

/// <summary>Standard uncertainties (coverage factor 1) of what is read in a pressure-decay test.</summary>
/// <param name="Volume">Of the test volume with fittings and hoses, zero or more.</param>
/// <param name="Pressure">Of one pressure reading, above zero.</param>
/// <param name="TemperatureKelvin">Of one gas temperature in kelvin, zero or more; it dominates in practice.</param>
/// <param name="Duration">Of the time between the readings, zero or more.</param>
public sealed record DecayUncertainty(
    Volume Volume,
    Pressure Pressure,
    double TemperatureKelvin,
    TimeSpan Duration
);

/// <summary>How the leak rate is taken from the readings.</summary>
public enum DecayMethod
{
    /// <summary>From the first and the last reading.</summary>
    TwoPoint,

    /// <summary>From a straight line of least squares through all readings, three or more.</summary>
    LeastSquares,
}

/// <summary>A pressure-decay test as it was carried out.</summary>
public sealed record DecayTest
{
    /// <summary>Test volume with fittings and hoses, above zero; an error of it is a proportional error of the rate.</summary>
    public required Volume Volume { get; init; }

    /// <summary>The readings in order of time, two or more.</summary>
    public required IReadOnlyList<DecayReading> Readings { get; init; }

    /// <summary>Standard uncertainties of the readings.</summary>
    public required DecayUncertainty Uncertainty { get; init; }

    /// <summary>Temperature to which the rate refers; null for the temperature of the first reading.</summary>
    public Temperature? Reference { get; init; }

    /// <summary>How the rate is found.</summary>
    public DecayMethod Method { get; init; }

    /// <summary>Largest allowed rate in a unit of leak rate, for instance Pa·m³/s; null when nothing is to be judged.</summary>
    public WrittenLimit? Limit { get; init; }

    /// <summary>Everything that keeps this test from being evaluated; empty when nothing does.</summary>
    public IReadOnlyList<Refusal> Check()
    {
        var needed = Method == DecayMethod.TwoPoint ? 2 : 3;
        var check = new InputCheck()
            .Positive("test volume", Volume.Litres, "l")
            .NotNegative("uncertainty of the volume", Uncertainty.Volume.Litres, "l")
            .Positive("uncertainty of the pressure", Uncertainty.Pressure.Pascals, "Pa")
            .NotNegative("uncertainty of the temperature", Uncertainty.TemperatureKelvin, "K")
            .NotNegative("uncertainty of the time", Uncertainty.Duration.TotalSeconds, "s")
            .Require(
                Readings.Count >= needed,
                RefusalReason.TooFewData,
                "readings",
                $"There are {Readings.Count} readings, but {needed} are needed.",
                "Add readings."
            );
        for (var i = 0; i < Readings.Count; i++)
        {
            check
                .Positive(
                    $"pressure of reading {i + 1}",
                    Readings[i].AbsolutePressure.Pascals,
                    "Pa"
                )
                .Positive($"temperature of reading {i + 1}", Readings[i].GasTemperature.Kelvin, "K")
                .Require(
                    i == 0 || Readings[i].Time > Readings[i - 1].Time,
                    RefusalReason.OutOfRange,
                    $"time of reading {i + 1}",
                    "It is not later than the reading before.",
                    "Put the readings in the order of time, each time once."
                );
        }

        return check
            .LimitOf("limit", Limit, Units.Dimension.LeakRate, "in Pa·m³/s, mbar·l/s or atm·cm³/s")
            .Refusals;
    }
}
