using CsCheck;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Units;

namespace WeldTrace.Engineering.Tests.Quantities;

/// <summary>Typed quantities agree with the unit catalogue, whose factors are checked against j_units.csv, and go round exactly.</summary>
public sealed class QuantityUnitsTests
{
    private static readonly Dictionary<
        string,
        (string Si, Func<double, double> ToSi, Func<double, double> Back)
    > Conversions = new()
    {
        ["mm"] = ("m", x => Length.FromMillimetres(x).SiValue, x => Length.FromSi(x).Millimetres),
        ["µm"] = ("m", x => Length.FromMicrometres(x).SiValue, x => Length.FromSi(x).Micrometres),
        ["in"] = ("m", x => Length.FromInches(x).SiValue, x => Length.FromSi(x).Inches),
        ["mm/min"] = (
            "m/s",
            x => Speed.FromMillimetresPerMinute(x).SiValue,
            x => Speed.FromSi(x).MillimetresPerMinute
        ),
        ["in/min"] = (
            "m/s",
            x => Speed.FromInchesPerMinute(x).SiValue,
            x => Speed.FromSi(x).InchesPerMinute
        ),
        ["rev/min"] = (
            "1/s",
            x => RotationSpeed.FromRevolutionsPerMinute(x).SiValue,
            x => RotationSpeed.FromSi(x).RevolutionsPerMinute
        ),
        ["rad/s"] = (
            "1/s",
            x => RotationSpeed.FromRadiansPerSecond(x).SiValue,
            x => RotationSpeed.FromSi(x).RadiansPerSecond
        ),
        ["kN"] = ("N", x => Force.FromKilonewtons(x).SiValue, x => Force.FromSi(x).Kilonewtons),
        ["lbf"] = ("N", x => Force.FromPoundsForce(x).SiValue, x => Force.FromSi(x).PoundsForce),
        ["lbf·ft"] = (
            "N·m",
            x => Torque.FromFootPoundsForce(x).SiValue,
            x => Torque.FromSi(x).FootPoundsForce
        ),
        ["bar"] = ("Pa", x => Pressure.FromBar(x).SiValue, x => Pressure.FromSi(x).Bar),
        ["MPa"] = (
            "Pa",
            x => Pressure.FromMegapascals(x).SiValue,
            x => Pressure.FromSi(x).Megapascals
        ),
        ["mbar"] = ("Pa", x => Pressure.FromMillibar(x).SiValue, x => Pressure.FromSi(x).Millibar),
        ["psi"] = (
            "Pa",
            x => Pressure.FromPoundsPerSquareInch(x).SiValue,
            x => Pressure.FromSi(x).PoundsPerSquareInch
        ),
        ["°C"] = (
            "K",
            x => Temperature.FromDegreesCelsius(x).SiValue,
            x => Temperature.FromSi(x).DegreesCelsius
        ),
        ["°F"] = (
            "K",
            x => Temperature.FromDegreesFahrenheit(x).SiValue,
            x => Temperature.FromSi(x).DegreesFahrenheit
        ),
        ["l"] = ("m³", x => Volume.FromLitres(x).SiValue, x => Volume.FromSi(x).Litres),
        ["cm³"] = (
            "m³",
            x => Volume.FromCubicCentimetres(x).SiValue,
            x => Volume.FromSi(x).CubicCentimetres
        ),
        ["in³"] = ("m³", x => Volume.FromCubicInches(x).SiValue, x => Volume.FromSi(x).CubicInches),
        ["lb"] = ("kg", x => Mass.FromPounds(x).SiValue, x => Mass.FromSi(x).Pounds),
        ["kJ"] = ("J", x => Energy.FromKilojoules(x).SiValue, x => Energy.FromSi(x).Kilojoules),
        ["kW"] = ("W", x => Power.FromKilowatts(x).SiValue, x => Power.FromSi(x).Kilowatts),
        ["J/mm"] = (
            "J/m",
            x => LineEnergy.FromJoulesPerMillimetre(x).SiValue,
            x => LineEnergy.FromSi(x).JoulesPerMillimetre
        ),
        ["mm/rev"] = (
            "m/rev",
            x => WeldPitch.FromMillimetresPerRevolution(x).SiValue,
            x => WeldPitch.FromSi(x).MillimetresPerRevolution
        ),
        ["in/rev"] = (
            "m/rev",
            x => WeldPitch.FromInchesPerRevolution(x).SiValue,
            x => WeldPitch.FromSi(x).InchesPerRevolution
        ),
        ["°"] = ("rad", x => Angle.FromDegrees(x).SiValue, x => Angle.FromSi(x).Degrees),
        ["mbar·l/s"] = (
            "Pa·m³/s",
            x => LeakRate.FromMillibarLitresPerSecond(x).SiValue,
            x => LeakRate.FromSi(x).MillibarLitresPerSecond
        ),
    };

    public static TheoryData<string> Symbols => [.. Conversions.Keys];

    [Theory]
    [MemberData(nameof(Symbols))]
    public void Quantity_AnyValue_AgreesWithTheCatalogueAndGoesRound(string symbol)
    {
        var (si, toSi, back) = Conversions[symbol];
        Gen.Double[-200, 1e6]
            .Sample(value =>
            {
                var scale = Math.Max(Math.Abs(value), 460);
                var expected = UnitCatalogue.Convert(value, symbol, si);
                Assert.InRange(
                    Math.Abs(toSi(value) - expected),
                    0,
                    1e-13 * Math.Max(Math.Abs(expected), si == "K" ? 300 : 0)
                );
                Assert.InRange(Math.Abs(back(toSi(value)) - value), 0, 1e-12 * scale);
            });
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void FromSi_NoFiniteNumber_Throws(double value)
    {
        Assert.ThrowsAny<ArgumentOutOfRangeException>(() => Length.FromSi(value));
        Assert.ThrowsAny<ArgumentOutOfRangeException>(() => Temperature.FromSi(value));
    }

    [Fact]
    public void Temperature_BelowAbsoluteZero_Throws() =>
        Assert.ThrowsAny<ArgumentOutOfRangeException>(() => Temperature.FromDegreesCelsius(-274));

    [Fact]
    public void Ratio_OverZero_Throws() =>
        Assert.ThrowsAny<ArgumentOutOfRangeException>(() => Pressure.FromBar(1) / Pressure.Zero);
}
