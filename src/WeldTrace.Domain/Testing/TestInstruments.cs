using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Testing;

/// <summary>An instrument that supplied acceptance values of a test.</summary>
/// <param name="Id">Instrument.</param>
/// <param name="Mark">Its mark.</param>
/// <param name="Measures">What it measures.</param>
/// <param name="CalibratedUntil">First day on which its calibration, as it stood then, was out of date.</param>
public sealed record UsedInstrument(
    Guid Id,
    string Mark,
    InstrumentKind Measures,
    DateOnly CalibratedUntil
)
{
    /// <summary>Upper end of its range; null in tests recorded before it was kept.</summary>
    public Measured? Upper { get; init; }
}

/// <summary>What somebody typed or scanned for an instrument, and what the register has of it.</summary>
/// <param name="Field">Field that it was typed into.</param>
/// <param name="Typed">What was typed.</param>
/// <param name="Found">Instrument; null when the register has none.</param>
public sealed record TypedInstrument(string Field, string? Typed, Instrument? Found);

/// <summary>An instrument that a test needs.</summary>
/// <param name="Field">Field that names it.</param>
/// <param name="Kind">What it must measure.</param>
/// <param name="Largest">Largest value that it reads; null when that isn't known.</param>
/// <param name="Unit">Unit of that value.</param>
internal sealed record NeededInstrument(
    string Field,
    InstrumentKind Kind,
    double? Largest,
    string Unit
);

/// <summary>Floor rule F13 at the tests of a vessel.</summary>
internal static class TestInstruments
{
    /// <summary>Checks each needed instrument; those that were found are kept with the test.</summary>
    public static IReadOnlyList<UsedInstrument> Take(
        this Checks checks,
        TestFacts facts,
        params IReadOnlyList<NeededInstrument> needed
    ) =>
        checks.TakeFrom(
            facts,
            [.. needed.Select(n => (n, facts.Typed.FirstOrDefault(t => t.Field == n.Field)))]
        );

    private static List<UsedInstrument> TakeFrom(
        this Checks checks,
        TestFacts facts,
        IReadOnlyList<(NeededInstrument Needed, TypedInstrument? Typed)> typedOnes
    )
    {
        List<UsedInstrument> used = [];
        foreach (var (one, typed) in typedOnes)
        {
            if (string.IsNullOrWhiteSpace(typed?.Typed))
            {
                checks.That(
                    false,
                    "F13",
                    $"Scan or type the mark of the instrument for {InstrumentRules.Word(one.Kind)}.",
                    one.Field
                );
                continue;
            }

            checks.Add(
                InstrumentRules.Check(
                    typed.Found,
                    typed.Typed,
                    one.Kind,
                    one.Largest,
                    one.Unit,
                    facts.Examiner.Today,
                    one.Field
                )
            );
            if (typed.Found is { DueOn: { } due } found)
            {
                used.Add(
                    new(found.Id, found.Mark, found.Measures, due) { Upper = found.Text.Upper }
                );
            }
        }

        return used;
    }

    /// <summary>Checks whatever was typed into a field that takes any instruments, and keeps those that were found.</summary>
    public static IReadOnlyList<UsedInstrument> TakeAny(
        this Checks checks,
        TestFacts facts,
        string field
    ) =>
        checks.TakeFrom(
            facts,
            [
                .. facts
                    .Typed.Where(t => t.Field == field)
                    .Select(t =>
                        (
                            new NeededInstrument(
                                field,
                                t.Found?.Measures ?? InstrumentKind.Other,
                                null,
                                ""
                            ),
                            (TypedInstrument?)t
                        )
                    ),
            ]
        );

    /// <summary>The marks as they are printed.</summary>
    public static string Marks(IEnumerable<UsedInstrument> used) =>
        string.Join(", ", used.Select(u => u.Mark));
}
