using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>A ledger entry that has everything but its number.</summary>
internal sealed record PendingEntry(Record Record, string Content)
{
    public LedgerEntry Numbered(long number)
    {
        var acts = Record.PendingActs;
        var reasons = acts.Select(a => a.Reason)
            .Where(r => !string.IsNullOrWhiteSpace(r))
            .Distinct()
            .ToList();
        return new LedgerEntry
        {
            Number = number,
            At = acts[^1].At,
            ActorId = acts[^1].ActorId,
            ActorName = acts[^1].ActorName,
            Act = Shorten(string.Join("; ", acts.Select(a => a.Act).Distinct())),
            Reason = reasons.Count == 0 ? null : string.Join("\n", reasons),
            RecordKind = Record.Kind,
            RecordId = Record.Id,
            RecordVersion = Record.Version,
            Vessels = Record.ConcernedVessels,
            Content = Content,
        };
    }

    private static string Shorten(string acts) => acts.Length <= 100 ? acts : acts[..99] + "…";
}
