using System.Globalization;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Reading;

/// <summary>Quantities as printed in the grids of documents.</summary>
internal static class Texts
{
    private const int Digits = 4;

    public static string Of<T>(T quantity, UnitSystem units, UnitScale scale = UnitScale.Usual)
        where T : struct, IQuantity<T> => UnitText.For(quantity, units, Digits, scale).ToString();

    public static string Number(double value, int decimals) =>
        value.ToString($"F{decimals}", CultureInfo.InvariantCulture);
}
