using WeldTrace.Domain.Ledger;

namespace WeldTrace.Domain.Tests.Ledger;

internal static class SampleEntries
{
    public static readonly Guid Vessel = new("0198c0de-0000-7000-8000-00000000000a");
    public static readonly Guid OtherVessel = new("0198c0de-0000-7000-8000-00000000000b");

    public static LedgerEntry RunEnded { get; } =
        new()
        {
            Number = 41,
            At = new DateTimeOffset(2026, 3, 2, 10, 15, 30, TimeSpan.FromHours(1)),
            ActorId = new Guid("0198c0de-0000-7000-8000-000000000001"),
            ActorName = "Ewa Nowak-Ødegård",
            Act = "weld run ended",
            Reason = "Traverse stopped:\n\"axial force\" low",
            RecordKind = "weld-run",
            RecordId = new Guid("0198c0de-0000-7000-8000-000000000002"),
            RecordVersion = 3,
            Vessels = [OtherVessel, Vessel, OtherVessel],
            Content = """{ "pass": 2, "metres": "1.250", "joint": "J1" }""",
        };
}
