using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Documents.Exchange;

/// <summary>Tests and steps signed off, as inspections of the vessel.</summary>
internal static class EpcisTests
{
    /// <summary>Every test as it was recorded, and those that were withdrawn later.</summary>
    public static (IReadOnlyList<EpcisEvent> Events, IReadOnlyList<WrongEvent> Withdrawn) Of(
        ExchangeSource source
    )
    {
        var tests = source
            .Records.OfType<TestRecord>()
            .OrderBy(t => t.TestedAt)
            .ThenBy(t => t.Id)
            .Select(t => (Test: t, Entry: Judged(source, t)))
            .Where(t => t.Entry is not null)
            .Select(t => (t.Test, Event: Inspection(source, t.Test, t.Entry!)))
            .ToList();
        var withdrawn = tests
            .Where(t => t.Test.Withdrawal is not null)
            .Select(t =>
                (t.Test, t.Event, By: source.First(t.Test.Id, r => r.ContainsKey("withdrawal")))
            )
            .Where(t => t.By is not null)
            .Select(t => new WrongEvent(
                t.Event,
                t.By!,
                "incorrect_data",
                [
                    .. tests
                        .Where(o =>
                            o.Test.Kind == t.Test.Kind
                            && o.Test.StepSequence == t.Test.StepSequence
                            && o.Event.Entry.Number > t.By!.Number
                        )
                        .Select(o => o.Event)
                        .Take(1),
                ]
            ))
            .ToList();
        return (
            [
                .. tests.Select(t => t.Event),
                .. source.Records.OfType<StepSignOff>().SelectMany(s => Of(source, s)),
            ],
            withdrawn
        );
    }

    /// <summary>The act by which the test had its verdict; without one, the act that began it.</summary>
    private static LedgerEntry? Judged(ExchangeSource source, TestRecord test) =>
        source.First(test.Id, t => t.ContainsKey("verdict")) ?? source.Of(test.Id).FirstOrDefault();

    private static EpcisEvent Inspection(
        ExchangeSource source,
        TestRecord test,
        LedgerEntry entry
    ) =>
        new(entry, "ObjectEvent")
        {
            At = entry.At,
            Action = "OBSERVE",
            BizStep = "inspecting",
            Disposition = test.Verdict switch
            {
                Verdict.Pass => "conformant",
                Verdict.Fail => "non_conformant",
                _ => "in_progress",
            },
            Things = [source.VesselId],
            Papers = [("testres", test.Id)],
            Words = test.VerdictSentence.Length > 0 ? test.VerdictSentence : test.Label,
        };

    private static IEnumerable<EpcisEvent> Of(ExchangeSource source, StepSignOff step) =>
        source
            .Of(step.Id)
            .Take(1)
            .Select(e => new EpcisEvent(e, "ObjectEvent")
            {
                At = step.At,
                Action = "OBSERVE",
                BizStep =
                    step.StepKind == Domain.VesselDesigns.StepKind.Acceptance
                        ? "accepting"
                        : "inspecting",
                Disposition =
                    step.StepKind == Domain.VesselDesigns.StepKind.Acceptance
                        ? "conformant"
                        : "in_progress",
                Things = [source.VesselId],
                Papers = [("cert", step.Id)],
                Words = step.Statement,
            });
}
