using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Documents.Exchange;

/// <summary>Findings: that the vessel did not conform, and that this was dealt with.</summary>
internal static class EpcisFindings
{
    public static IEnumerable<EpcisEvent> Of(ExchangeSource source) =>
        source.Records.OfType<Finding>().OrderBy(f => f.Number).SelectMany(f => Of(source, f));

    private static IEnumerable<EpcisEvent> Of(ExchangeSource source, Finding finding)
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
