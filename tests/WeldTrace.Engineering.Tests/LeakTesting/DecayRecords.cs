using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.LeakTesting;

internal static class DecayRecords
{
    public static DecayTest TwoPoint(
        double cubicMetres,
        params (double Seconds, double Pascals, double Kelvin)[] readings
    ) =>
        new()
        {
            Volume = Volume.FromCubicMetres(cubicMetres),
            Readings = [.. readings.Select(Reading)],
            Uncertainty = Uncertainty(0, 20, 0, 0),
        };

    public static DecayUncertainty Uncertainty(
        double cubicMetres,
        double pascals,
        double kelvin,
        double seconds
    ) =>
        new(
            Volume.FromCubicMetres(cubicMetres),
            Pressure.FromPascals(pascals),
            kelvin,
            TimeSpan.FromSeconds(seconds)
        );

    private static DecayReading Reading((double Seconds, double Pascals, double Kelvin) values) =>
        new(
            TimeSpan.FromSeconds(values.Seconds),
            Pressure.FromPascals(values.Pascals),
            Temperature.FromKelvin(values.Kelvin)
        );
}
