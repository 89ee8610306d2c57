using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.PressureTesting;

/// <summary>What fills the vessel during a pressure test.</summary>
public enum TestMedium
{
    /// <summary>A gas: the pressure follows the absolute temperature.</summary>
    Gas,

    /// <summary>A liquid: no simple law; the pressure is compared as read unless a sensitivity is given.</summary>
    Liquid,
}

/// <summary>One reading during a hold.</summary>
/// <param name="Time">Time since any fixed instant.</param>
/// <param name="AbsolutePressure">Absolute pressure, above zero.</param>
/// <param name="Medium">Temperature of the medium, above zero kelvin.</param>
public readonly record struct HoldReading(
    TimeSpan Time,
    Pressure AbsolutePressure,
    Temperature Medium
);

/// <summary>A hold at constant pressure with its readings and what is allowed.</summary>
public sealed record HoldTest
{
    /// <summary>Gas or liquid.</summary>
    public required TestMedium Medium { get; init; }

    /// <summary>Readings in order of time; the first and the last are compared.</summary>
    public required IReadOnlyList<HoldReading> Readings { get; init; }

    /// <summary>Standard uncertainty of one pressure reading, above zero.</summary>
    public required Pressure PressureUncertainty { get; init; }

    /// <summary>Standard uncertainty of one temperature in kelvin, zero or more.</summary>
    public required double TemperatureUncertaintyKelvin { get; init; }

    /// <summary>Largest allowed drop, in a unit of pressure.</summary>
    public required WrittenLimit AllowedDrop { get; init; }

    /// <summary>Time for which the pressure must be held.</summary>
    public required TimeSpan RequiredHold { get; init; }

    /// <summary>Change of pressure per kelvin of the filled vessel; only used for a liquid; null when it is not known.</summary>
    public Pressure? LiquidPressurePerKelvin { get; init; }

    /// <summary>Everything that keeps this hold from being evaluated; empty when nothing does.</summary>
    public IReadOnlyList<Refusal> Check()
    {
        var check = new InputCheck()
            .Positive("uncertainty of the pressure", PressureUncertainty.Pascals, "Pa")
            .NotNegative("uncertainty of the temperature", TemperatureUncertaintyKelvin, "K")
            .NotNegative("required hold", RequiredHold.TotalSeconds, "s")
            .LimitOf(
                "allowed drop",
                AllowedDrop,
                Units.Dimension.Pressure,
                "in bar, MPa, Pa or psi"
            )
            .Require(
                Readings.Count >= 2,
                RefusalReason.TooFewData,
                "readings",
                "Two are needed, one at the start and one at the end.",
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
                .Positive($"temperature of reading {i + 1}", Readings[i].Medium.Kelvin, "K")
                .Require(
                    i == 0 || Readings[i].Time > Readings[i - 1].Time,
                    RefusalReason.OutOfRange,
                    $"time of reading {i + 1}",
                    "It is not later than the reading before.",
                    "Put the readings in the order of time, each time once."
                );
        }

        return check.Refusals;
    }
}
