using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents;

/// <summary>Signatures as recorded in the ledger.</summary>
internal static class SignatureTable
{
    private const int HashDigits = 16;

    public const string Explanation =
        "Each signature was given with the password and is bound to the record whose SHA-256 begins with"
        + " the digits shown.";

    public static Table Of(IReadOnlyList<SignatureEntry> signatures, TimeZoneInfo zone)
    {
        TableColumn[] columns =
        [
            new("Name", 21),
            new("Meaning", 30),
            new("Signed", 19),
            new("Record", 24),
            new("SHA-256 begins", 19),
        ];
        var rows = signatures.Select(entry => new TableRow([
            new Cell(entry.PrintedName) { IsHead = true },
            entry.Meaning,
            SiteTime.Second(entry.SignedAt, zone),
            entry.Record,
            Shortened(entry.RecordHash),
        ])
        {
            Struck = entry.Superseded is not null,
            Note = CorrectionText.Note(entry.Superseded, zone),
        });
        return new Table(columns, [.. rows]);
    }

    private static string Shortened(string hash) =>
        hash.Length <= HashDigits ? hash : hash[..HashDigits];
}
