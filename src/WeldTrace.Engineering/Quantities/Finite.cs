using System.Runtime.CompilerServices;

namespace WeldTrace.Engineering.Quantities;

internal static class Finite
{
    public static double Require(
        double value,
        [CallerArgumentExpression(nameof(value))] string? name = null
    ) =>
        double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(
                name,
                value,
                "The value must be a finite number."
            );
}
