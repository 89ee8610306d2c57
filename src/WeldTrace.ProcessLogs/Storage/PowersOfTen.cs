namespace WeldTrace.ProcessLogs.Storage;

internal static class PowersOfTen
{
    /// <summary>Most decimals that a whole number of last digits in 32 bits can have.</summary>
    public const int MostDecimals = 9;

    /// <summary>Most digits of a number that one division rounds correctly.</summary>
    public const int MostDigits = 15;

    private static readonly double[] Doubles =
    [
        1,
        1e1,
        1e2,
        1e3,
        1e4,
        1e5,
        1e6,
        1e7,
        1e8,
        1e9,
        1e10,
        1e11,
        1e12,
        1e13,
        1e14,
        1e15,
    ];

    private static readonly long[] Integers =
    [
        1,
        10,
        100,
        1_000,
        10_000,
        100_000,
        1_000_000,
        10_000_000,
        100_000_000,
        1_000_000_000,
    ];

    public static double AsDouble(int exponent) => Doubles[exponent];

    public static long AsInteger(int exponent) => Integers[exponent];
}
