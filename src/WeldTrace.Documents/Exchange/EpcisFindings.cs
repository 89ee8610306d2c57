using System.Text.Json;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;

namespace WeldTrace.Documents.Exchange;

/// <summary>Findings: that the vessel did not conform, what was decided on it, and that this was dealt with.</summary>
internal static class EpcisFindings
{
    /// <summary>Why a decision no longer stands: nothing was wrong in it, but another one took its place.</summary>
    private static readonly string DecidedAgain = EpcisHistory.Own("decidedAgain");

    /// <summary>What became of each finding, and the decisions that another one replaced.</summary>
    public static (IReadOnlyList<EpcisEvent> Events, IReadOnlyList<WrongEvent> Replaced) Of(
        ExchangeSource source
    )
    {
        List<EpcisEvent> events = [];
        List<WrongEvent> replaced = [];
        foreach (var finding in source.Records.OfType<Finding>().OrderBy(f => f.Number))
        {
            var decisions = DecisionsOf(source, finding).ToList();
            events.AddRange(Bounds(source, finding).Concat(decisions));
            replaced.AddRange(
                decisions
                    .Zip(decisions.Skip(1))
                    .Select(p => new WrongEvent(p.First, p.Second.Entry, DecidedAgain, [p.Second]))
            );
        }

        return (events, replaced);
    }

    private static IEnumerable<EpcisEvent> DecisionsOf(ExchangeSource source, Finding finding) =>
        source
            .Of(finding.Id)
            .Select(e => (Entry: e, Json: ExchangeSource.Content(e)["disposition"]?.ToJsonString()))
            .Where(e => e.Json is not null)
            .DistinctBy(e => e.Json)
            .Select(e =>
                (
                    e.Entry,
                    Decision: JsonSerializer.Deserialize<Disposition>(e.Json!, DomainJson.Options)!
                )
            )
            .Select(e =>
                Event(
                    source,
                    finding,
                    e.Entry,
                    "other",
                    "non_conformant",
                    $"{finding.Label} is decided: {Finding.DispositionWord(e.Decision.Kind)}. {e.Decision.Reason}"
                )
            );

    private static IEnumerable<EpcisEvent> Bounds(ExchangeSource source, Finding finding)
    {
        var opened = source.Of(finding.Id).FirstOrDefault();
        var closed = source.First(finding.Id, f => f.ContainsKey("verification"));
        if (opened is not null)
        {
            yield return Event(
                source,
                finding,
                opened,
                "holding",
                "non_conformant",
                finding.Description
            );
        }

        if (closed is not null && closed != opened)
        {
            yield return Event(
                source,
                finding,
                closed,
                "inspecting",
                "in_progress",
                $"Finding {finding.Number} is dealt with and verified."
            );
        }
    }

    private static EpcisEvent Event(
        ExchangeSource source,
        Finding finding,
        LedgerEntry entry,
        string step,
        string disposition,
        string words
    ) =>
        new(entry, "ObjectEvent")
        {
            At = entry.At,
            Action = "OBSERVE",
            BizStep = step,
            Disposition = disposition,
            Things = [source.VesselId],
            Papers = [(EpcisHistory.Own("finding"), finding.Id)],
            Words = words,
        };
}
