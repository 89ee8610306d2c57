using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.ProductionTesting;

/// <summary>When a test weld of running production falls due.</summary>
/// <param name="EveryWelded">Length of weld between two tests on a machine; null when length alone asks for none.</param>
/// <param name="EveryHours">Hours between two tests while a machine welds; null when time alone asks for none.</param>
/// <param name="AfterToolChange">After another tool is taken.</param>
/// <param name="AfterMachineWork">After the machine was repaired, moved or refurbished.</param>
/// <param name="AfterDeviation">After a run left its windows or was interrupted.</param>
/// <param name="AfterDefect">After an examination or test found a defect.</param>
/// <param name="Asks">What is tested, in words.</param>
/// <param name="Source">Rule or specification behind it, with its edition.</param>
public sealed record ProductionTestRule(
    Length? EveryWelded,
    int? EveryHours,
    bool AfterToolChange,
    bool AfterMachineWork,
    bool AfterDeviation,
    bool AfterDefect,
    string Asks,
    string Source
)
{
    private static Length LongestInterval => Length.FromMetres(100_000);

    internal void Check(Checks checks) =>
        checks
            .That(
                EveryWelded is not { } length
                    || (length > Length.Zero && length <= LongestInterval),
                "production-test",
                "Give the length of weld between two production tests, above zero.",
                nameof(EveryWelded)
            )
            .That(
                EveryHours is null or (> 0 and <= 10_000),
                "production-test",
                "Give the hours between two production tests, 1 to 10000.",
                nameof(EveryHours)
            )
            .Text(Asks, 200, "Say what a production test consists of", nameof(Asks))
            .Text(Source, 200, "Say which rule asks for production tests", "ProductionTestSource");
}
