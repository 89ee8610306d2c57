using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.LeakTesting;

/// <summary>
/// What a leak rate (throughput at a stated gas temperature) means in other terms. Gas constant 8.314462618 J/(mol·K) (CODATA 2018).
/// </summary>
public static class LeakRates
{
    /// <summary>Molar gas constant in J/(mol·K).</summary>
    public const double GasConstant = 8.314462618;

    private const double StandardCubicCentimetre = 0.101325;
    private const double LongestSeconds = 9e11;

    /// <summary>Amount of gas in mol/s: q/(R·T).</summary>
    /// <param name="rate">Throughput at <paramref name="gas"/>.</param>
    /// <param name="gas">Its temperature, above zero kelvin.</param>
    /// <param name="gasConstantJoulesPerMoleKelvin">Gas constant; older documents print 8.314472.</param>
    public static double MolesPerSecond(
        LeakRate rate,
        Temperature gas,
        double gasConstantJoulesPerMoleKelvin = GasConstant
    ) => Finite.Require(rate.SiValue / (gasConstantJoulesPerMoleKelvin * Above(gas)));

    /// <summary>Mass of gas in kg/s.</summary>
    /// <param name="rate">Throughput at <paramref name="temperature"/>.</param>
    /// <param name="temperature">Its temperature, above zero kelvin.</param>
    /// <param name="gas">The gas.</param>
    public static double KilogramsPerSecond(LeakRate rate, Temperature temperature, TestGas gas)
    {
        ArgumentNullException.ThrowIfNull(gas);
        return Finite.Require(MolesPerSecond(rate, temperature) * gas.GramsPerMole / 1000);
    }

    /// <summary>Standard cubic centimetres per second, 101 325 Pa at the stated standard temperature (0, 15, 20 and 25 °C are all in use).</summary>
    public static double StandardCubicCentimetresPerSecond(
        LeakRate rate,
        Temperature gas,
        Temperature standard
    ) => Finite.Require(rate.SiValue * Above(standard) / Above(gas) / StandardCubicCentimetre);

    /// <summary>Throughput at a gas temperature from standard cubic centimetres per second at a standard temperature.</summary>
    public static LeakRate FromStandardCubicCentimetresPerSecond(
        double value,
        Temperature standard,
        Temperature gas
    ) => LeakRate.FromSi(value * StandardCubicCentimetre * Above(gas) / Above(standard));

    /// <summary>Volume of gas in m³/s at an absolute pressure above zero: q/p.</summary>
    public static double CubicMetresPerSecond(LeakRate rate, Pressure absolute) =>
        Finite.Require(rate.SiValue / absolute.Pascals);

    /// <summary>Time in which a volume loses a small part of its pressure at an unchanged rate: part·p·V/q.</summary>
    /// <param name="part">Part of the pressure, for instance 0.01.</param>
    /// <param name="absolute">Absolute pressure, above zero.</param>
    /// <param name="volume">Volume, above zero.</param>
    /// <param name="rate">Leak rate, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not above zero.</exception>
    public static TimeSpan TimeToLose(double part, Pressure absolute, Volume volume, LeakRate rate)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(rate.SiValue, nameof(rate));
        var seconds = part * absolute.Pascals * volume.CubicMetres / rate.SiValue;
        return Finite.Require(seconds) is var time && time < LongestSeconds
            ? TimeSpan.FromSeconds(Math.Max(time, -LongestSeconds))
            : TimeSpan.MaxValue;
    }

    /// <summary>Change of gas pressure that a change of temperature feigns: p·ΔT/T.</summary>
    public static Pressure ApparentChange(
        Pressure absolute,
        Temperature gas,
        double changeKelvin
    ) => absolute * (changeKelvin / Above(gas));

    private static double Above(Temperature temperature) =>
        temperature.Kelvin > 0
            ? temperature.Kelvin
            : throw new ArgumentOutOfRangeException(
                nameof(temperature),
                "Must be above zero kelvin."
            );
}
