using System.Text.Json;
using System.Text.Json.Nodes;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Documents.Exchange;

/// <summary>Tests and steps signed off, as inspections of the vessel.</summary>
internal static class EpcisTests
{
    private const string VerdictName = "verdict";
    private const string WithdrawalName = "withdrawal";

    /// <summary>
    /// Each result that a test had, and those that were wrong: of a test that was withdrawn, and of a section that was measured again. The
    /// result of a hold that was repeated was no error, and stands beside the second.
    /// </summary>
    public static (IReadOnlyList<EpcisEvent> Events, IReadOnlyList<WrongEvent> Wrong) Of(
        ExchangeSource source
    )
    {
        var results = source
            .Records.OfType<TestRecord>()
            .OrderBy(t => t.TestedAt)
            .ThenBy(t => t.Id)
            .SelectMany(t => ResultsOf(source, t))
            .ToList();
        var wrong = results
            .Where(r => r.TakenBack is not null && (r.Test is SectionExamination || r.IsWithdrawn))
            .Select(r => new WrongEvent(
                r.Event,
                r.TakenBack!,
                "incorrect_data",
                [
                    .. results
                        .Where(o =>
                            o.Test.Kind == r.Test.Kind
                            && o.Test.StepSequence == r.Test.StepSequence
                            && o.Event.Entry.Number >= r.TakenBack!.Number
                        )
                        .OrderBy(o => o.Event.Entry.Number)
                        .Select(o => o.Event)
                        .Take(1),
                ]
            ))
            .ToList();
        return (
            [
                .. results.Select(r => r.Event),
                .. source.Records.OfType<StepSignOff>().SelectMany(s => Of(source, s)),
            ],
            wrong
        );
    }

    /// <summary>Every verdict that the test came to, in the order of time; without one, that it was begun.</summary>
    private static List<Result> ResultsOf(ExchangeSource source, TestRecord test)
    {
        List<Result> results = [];
        foreach (var entry in source.Of(test.Id))
        {
            var content = ExchangeSource.Content(entry);
            var now = VerdictOf(content);
            var isWithdrawn = content.ContainsKey(WithdrawalName);
            if (results is [.., { TakenBack: null } last] && (last.Told != now || isWithdrawn))
            {
                results[^1] = last with { TakenBack = entry, IsWithdrawn = isWithdrawn };
            }

            if (now.Verdict is not null && !isWithdrawn && results is not [.., { TakenBack: null }])
            {
                results.Add(new Result(test, now, Inspection(source, test, now, entry)));
            }
        }

        return results.Count > 0 ? results : Begun(source, test);
    }

    private static List<Result> Begun(ExchangeSource source, TestRecord test)
    {
        var withdrawn = source.First(test.Id, t => t.ContainsKey(WithdrawalName));
        return
        [
            .. source
                .Of(test.Id)
                .Take(1)
                .Select(e => new Result(test, default, Inspection(source, test, default, e))
                {
                    TakenBack = withdrawn,
                    IsWithdrawn = withdrawn is not null,
                }),
        ];
    }

    private static (Verdict? Verdict, string? Sentence) VerdictOf(JsonObject content) =>
        (
            content[VerdictName].Deserialize<Verdict?>(DomainJson.Options),
            (string?)content["verdictSentence"]
        );

    private static EpcisEvent Inspection(
        ExchangeSource source,
        TestRecord test,
        (Verdict? Verdict, string? Sentence) told,
        LedgerEntry entry
    ) =>
        new(entry, "ObjectEvent")
        {
            At = entry.At,
            Action = "OBSERVE",
            BizStep = "inspecting",
            Disposition = told.Verdict switch
            {
                Verdict.Pass => "conformant",
                Verdict.Fail => "non_conformant",
                _ => "in_progress",
            },
            Things = [source.VesselId],
            Papers = [("testres", test.Id)],
            Words = told.Sentence is { Length: > 0 } sentence ? sentence : test.Label,
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

    /// <summary>A result of a test, and the act that took it back.</summary>
    private sealed record Result(
        TestRecord Test,
        (Verdict? Verdict, string? Sentence) Told,
        EpcisEvent Event
    )
    {
        public LedgerEntry? TakenBack { get; init; }

        public bool IsWithdrawn { get; init; }
    }
}
