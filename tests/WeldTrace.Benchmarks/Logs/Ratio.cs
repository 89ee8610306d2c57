using System.Globalization;

namespace WeldTrace.Benchmarks.Logs;

/// <summary>One bar: what was measured against a reference of the same run.</summary>
/// <param name="What">What was measured.</param>
/// <param name="Measured">In words, with its unit.</param>
/// <param name="Reference">The reference in words.</param>
/// <param name="Value">The ratio, or the value that is compared.</param>
/// <param name="Bar">Largest that holds.</param>
internal sealed record Ratio(
    string What,
    string Measured,
    string Reference,
    double Value,
    double Bar
)
{
    public bool Holds => Value <= Bar;

    public static Ratio OfTimes(
        string what,
        double milliseconds,
        string reference,
        double referenceMilliseconds,
        double bar
    ) =>
        new(
            what,
            Text(milliseconds) + " ms",
            $"{reference}: {Text(referenceMilliseconds)} ms",
            milliseconds / referenceMilliseconds,
            bar
        );

    public string ToRow() =>
        $"| {What} | {Measured} | {Reference} | {Text(Value)} | {Text(Bar)} | {(Holds ? "holds" : "NOT MET")} |";

    public static string Text(double value) =>
        value >= 100 ? value.ToString("F0", CultureInfo.InvariantCulture)
        : value >= 10 ? value.ToString("F1", CultureInfo.InvariantCulture)
        : value.ToString("F3", CultureInfo.InvariantCulture);
}
