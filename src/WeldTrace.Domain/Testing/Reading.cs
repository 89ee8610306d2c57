using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Testing;

/// <summary>Checks that a reading could be true.</summary>
internal static class Reading
{
    /// <summary>Refuses a reading outside what can be.</summary>
    public static void Between(
        Checks checks,
        Measured? reading,
        double least,
        double greatest,
        string what,
        string field
    )
    {
        var value = reading?.InUnit();
        checks.That(
            value >= least && value <= greatest,
            "reading",
            reading is null
                ? FormattableString.Invariant(
                    $"{what} is missing; enter a value from {least:0.###} to {greatest:0.###}."
                )
                : FormattableString.Invariant(
                    $"{what}: {reading} can't be; a value from {least:0.###} to {greatest:0.###} {reading.Unit} is expected. Check digits and unit."
                ),
            field
        );
    }
}
