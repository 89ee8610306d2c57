using System.Security.Cryptography;
using System.Text;
using WeldTrace.Documents.Bundle;
using WeldTrace.Documents.Exchange;
using WeldTrace.Domain.Compliance;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;

namespace WeldTrace.Verify.Tests;

/// <summary>The history of one vessel: a run with its log, a leak test, a section with a photograph.</summary>
internal static class SampleBundle
{
    public const string Site = "Brinefield Reservoirs";
    public static readonly SiteKey Key = SiteKey.Create();
    public static readonly byte[] Photo = [0xFF, 0xD8, 0xFF, 0xE0, 1, 2, 3, 4, 5, 0xFF, 0xD9];
    public static readonly byte[] Certificate = Encoding.ASCII.GetBytes("%PDF-1.7 certificate");
    public static readonly byte[] Csv = Encoding.ASCII.GetBytes(
        "time_s,axial_force_kN\n0.00,0.1\n0.05,4.2\n"
    );

    public static HistoryBundleInput Input() => Input(Ledger());

    public static SampleLedger Ledger() =>
        new SampleLedger()
            .Append(
                "vessel planned",
                "vessel",
                0xa,
                1,
                """{"serial":"NR-0142"}""",
                SampleLedger.Vessel
            )
            .Append(
                "vessel planned",
                "vessel",
                0xb,
                1,
                """{"serial":"NR-0143"}""",
                SampleLedger.OtherVessel
            )
            .Append("weld run ended", "weld-run", 0x10, 1, Run("1.25"), SampleLedger.Vessel)
            .Append(
                "weld run ended",
                "weld-run",
                0x11,
                1,
                """{"metres":"1.20"}""",
                SampleLedger.OtherVessel
            )
            .Append("weld run corrected", "weld-run", 0x10, 2, Run("1.26"), SampleLedger.Vessel)
            .Append("leak test recorded", "leak-test", 0x20, 1, LeakTest, SampleLedger.Vessel)
            .Append("section recorded", "section", 0x30, 1, Section, SampleLedger.Vessel);

    private static ExchangeSource Exchange(SampleLedger ledger) =>
        new(
            SampleLedger.Vessel,
            [],
            [.. ledger.Of(SampleLedger.Vessel).Select(e => e.Entry)],
            new HashSet<string> { Hash(Csv), Hash(Photo), Hash(Certificate) },
            TimeZoneInfo.Utc,
            new DateTimeOffset(2026, 3, 2, 17, 0, 0, TimeSpan.Zero)
        );

    public static HistoryBundleInput Input(SampleLedger ledger) =>
        new()
        {
            Events = EpcisHistory.Write(Exchange(ledger)),
            Lineage = ProvLineage.Write(Exchange(ledger)),
            Compliance = ComplianceJson.Write(SampleLedger.Vessel, "NR-0142", [Shown]),
            ComplianceTable = "number,requirement\r\n1,Leak test\r\n"u8.ToArray(),
            VesselSerial = "NR-0142",
            VesselId = SampleLedger.Vessel,
            SiteName = Site,
            MadeAt = new DateTimeOffset(2026, 3, 2, 17, 0, 0, TimeSpan.Zero),
            TravelerPdf = Encoding.ASCII.GetBytes("%PDF-1.7 traveler of NR-0142"),
            Records = Newest(ledger),
            Entries = ledger.Of(SampleLedger.Vessel),
            Checkpoint = Key.Sign(ledger.Checkpoint(Site)),
            Logs = [new BundledLog(SampleLedger.Id(0x10), Writing(Csv))],
            Attachments =
            [
                Attachment(Photo, "macro 12x.JPG", "image/jpeg"),
                Attachment(Certificate, "../../etc/gauge.p/f", "application/octet-stream"),
            ],
        };

    private static ComplianceLine Shown =>
        new(
            new Requirement("1", "Leak test", "A document, 2", SourceKnown.Read),
            ComplianceState.Shown,
            [new RecordName("leak-test", SampleLedger.Id(0x20), "Leak test of NR-0142")],
            ""
        );

    public static async Task<byte[]> WriteAsync(HistoryBundleInput input)
    {
        using var zip = new MemoryStream();
        await HistoryBundleWriter.WriteAsync(input, Key, zip);
        return zip.ToArray();
    }

    public static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    public static Func<Stream, CancellationToken, Task> Writing(byte[] bytes) =>
        (stream, cancellation) => stream.WriteAsync(bytes, cancellation).AsTask();

    private static string LeakTest =>
        $$"""{"gauge":{"certificate":{"sha256":"{{Hash(Certificate)}}"} },"verdict":"passed"}""";

    private static string Section =>
        $$"""{"hookHeight_mm":"0.12","photo":{"fileName":"macro.jpg","sha256":"{{Hash(Photo)}}"} }""";

    private static string Run(string metres) =>
        $$"""{"csvSha256":"{{Hash(Csv)}}","metres":"{{metres}}"}""";

    private static BundledAttachment Attachment(byte[] bytes, string fileName, string mediaType) =>
        new(Hash(bytes), fileName, mediaType, Writing(bytes));

    private static BundledRecord[] Newest(SampleLedger ledger) =>
        [
            .. ledger
                .Entries.Where(entry => entry.Vessels.Contains(SampleLedger.Vessel))
                .GroupBy(entry => (entry.RecordKind, entry.RecordId))
                .Select(group => group.Last())
                .Select(e => new BundledRecord(e.RecordKind, e.RecordId, e.Content)),
        ];
}
