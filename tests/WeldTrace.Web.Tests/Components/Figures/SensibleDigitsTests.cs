using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Tests.Components.Figures;

public sealed class SensibleDigitsTests
{
    [Theory]
    [InlineData(0, 4, "0")]
    [InlineData(497.4188, 4, "497.4")]
    [InlineData(0.0497, 2, "0.050")]
    [InlineData(-3.0004, 3, "−3.00")]
    [InlineData(9999.96, 5, "10\u202f000")]
    [InlineData(123456.7, 4, "123\u202f457")]
    [InlineData(1.18835e-10, 3, "1.19 × 10⁻¹⁰")]
    [InlineData(2.5e12, 2, "2.5 × 10¹²")]
    [InlineData(double.NaN, 4, "–")]
    public void Show_AnyNumber_HasTheWantedDigits(double value, int digits, string shown) =>
        Assert.Equal(shown, SensibleDigits.Show(value, digits));

    [Theory]
    [InlineData(3016.4, "3000")]
    [InlineData(257.3, "260")]
    [InlineData(0.0512, "0.051")]
    [InlineData(double.NaN, "–")]
    public void Rough_AnyNumber_HasTwoDigitsThatDifferFromZero(double value, string shown) =>
        Assert.Equal(shown, SensibleDigits.Rough(value));

    [Theory]
    [InlineData(18.0, "18")]
    [InlineData(60.5, "60.5")]
    [InlineData(300.0, "300")]
    [InlineData(0.0, "0")]
    public void Nominal_Dimension_HasNoZerosAtItsEnd(double value, string shown) =>
        Assert.Equal(shown, SensibleDigits.Nominal(value));

    [Theory]
    [InlineData(0)]
    [InlineData(16)]
    public void Show_DigitsOutsideRange_Throws(int digits) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SensibleDigits.Show(1, digits));

    [Fact]
    public void UnitText_MetricAndInch_AreTheSameLength()
    {
        var length = Length.FromInches(2.5);

        Assert.Equal("63.50\u00a0mm", UnitText.For(length, UnitSystem.Metric).ToString());
        Assert.Equal("2.500\u00a0in", UnitText.For(length, UnitSystem.InchPound).ToString());
    }

    [Fact]
    public void UnitText_ScaleThatTheQuantityLacks_FallsBackToTheUsualOne() =>
        Assert.Equal(
            "11.5\u00a0kN",
            UnitText
                .For(Force.FromKilonewtons(11.5), UnitSystem.Metric, 3, UnitScale.Path)
                .ToString()
        );

    [Fact]
    public void UnitText_Temperature_TakesTheOffsetOfItsScale()
    {
        var warm = Temperature.FromDegreesCelsius(20);

        Assert.Equal("20.00\u00a0°C", UnitText.For(warm, UnitSystem.Metric).ToString());
        Assert.Equal("68.00\u00a0°F", UnitText.For(warm, UnitSystem.InchPound).ToString());
    }

    [Fact]
    public void UnitText_EveryQuantityOfEngineering_HasAUnit()
    {
        var types = typeof(Length)
            .Assembly.GetTypes()
            .Where(t => t.IsValueType && t.GetInterfaces().Any(IsOfQuantities));

        foreach (var type in types)
        {
            foreach (var system in Enum.GetValues<UnitSystem>())
            {
                Assert.NotEmpty(UnitText.Of(Activator.CreateInstance(type)!, system).Unit);
            }
        }
    }

    [Fact]
    public void UnitText_NoQuantity_Throws() =>
        Assert.Throws<ArgumentException>(() => UnitText.Of("18 mm", UnitSystem.Metric));

    private static bool IsOfQuantities(Type type) =>
        type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IQuantity<>);
}
