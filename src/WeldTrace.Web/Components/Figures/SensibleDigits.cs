using System.Globalization;

namespace WeldTrace.Web.Components.Figures;

/// <summary>Numbers for reading: a stated count of significant digits, a true minus sign, powers of ten for the very small and large.</summary>
public static class SensibleDigits
{
    /// <summary>The number with the given count of significant digits, from 1 to 15.</summary>
    public static string Show(double value, int significant = 4)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(significant, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(significant, 15);
        if (!double.IsFinite(value))
        {
            return "–";
        }

        if (value == 0)
        {
            return "0";
        }

        var format = "E" + (significant - 1).ToString(CultureInfo.InvariantCulture);
        var scientific = value.ToString(format, CultureInfo.InvariantCulture);
        var cut = scientific.IndexOf('E', StringComparison.Ordinal);
        var exponent = int.Parse(scientific.AsSpan(cut + 1), CultureInfo.InvariantCulture);
        return exponent is < -4 or > 8
            ? Engineering.Figures.TimesTenTo(Minus(scientific[..cut]), exponent)
            : Fixed(value, Math.Max(0, significant - 1 - exponent));
    }

    /// <summary>A rough figure: no digit that differs from zero after the given count of significant digits.</summary>
    public static string Rough(double value, int significant = 2) =>
        double.IsFinite(value)
            ? Show(
                double.Parse(
                    value.ToString(
                        "E" + (significant - 1).ToString(CultureInfo.InvariantCulture),
                        CultureInfo.InvariantCulture
                    ),
                    CultureInfo.InvariantCulture
                ),
                significant
            )
            : Show(value);

    /// <summary>A nominal value: at most the given count of significant digits, without zeros at the end of its decimals.</summary>
    public static string Nominal(double value, int significant = 6)
    {
        var text = Show(value, significant);
        return
            text.Contains('.', StringComparison.Ordinal)
            && !text.Contains('×', StringComparison.Ordinal)
            ? text.TrimEnd('0').TrimEnd('.')
            : text;
    }

    /// <summary>The number with a fixed count of decimals, groups of three parted by a narrow space from 10 000 on.</summary>
    public static string Fixed(double value, int decimals)
    {
        var letter = Math.Abs(value) >= 9999.5 ? "N" : "F";
        var text = value.ToString(
            letter + decimals.ToString(CultureInfo.InvariantCulture),
            CultureInfo.InvariantCulture
        );
        return Minus(text.Replace(",", "\u202f", StringComparison.Ordinal));
    }

    private static string Minus(string text) => text.Replace('-', '−');
}
