using System.Globalization;

namespace WeldTrace.Domain.Ledger;

/// <summary>Where things stand inside a history bundle.</summary>
public static class BundlePaths
{
    /// <summary>The list of all other files.</summary>
    public const string Manifest = "manifest.json";

    /// <summary>The site's signature over the manifest.</summary>
    public const string ManifestSignature = "manifest.sig";

    /// <summary>The site's public key.</summary>
    public const string SiteKey = "site-key.pem";

    /// <summary>The printed traveler.</summary>
    public const string Traveler = "traveler.pdf";

    /// <summary>The history book.</summary>
    public const string Book = "history.pdf";

    /// <summary>What happened to the vessel, as events of GS1 EPCIS 2.0.</summary>
    public const string Events = "history.epcis.jsonld";

    /// <summary>What was made from what and by whom, as W3C PROV-JSON.</summary>
    public const string Lineage = "records.prov.json";

    /// <summary>What is asked of the vessel and which records show it, as JSON.</summary>
    public const string Compliance = "compliance.json";

    /// <summary>The same as CSV.</summary>
    public const string ComplianceTable = "compliance.csv";

    /// <summary>The JSON Schema of the records.</summary>
    public const string RecordSchema = "records.schema.json";

    /// <summary>The JSON Schema of the manifest, of the ledger's files and of <see cref="Compliance"/>.</summary>
    public const string BundleSchema = "bundle.schema.json";

    /// <summary>How to check the bundle; VERIFY.txt in bundles that were made earlier.</summary>
    public const string Instructions = "VERIFY.md";

    /// <summary>The state of the ledger that the proofs lead to.</summary>
    public const string Checkpoint = "ledger/checkpoint.json";

    /// <summary>The site's signature over the checkpoint.</summary>
    public const string CheckpointSignature = "ledger/checkpoint.sig";

    /// <summary>The inclusion proofs of the entries.</summary>
    public const string Proofs = "ledger/proofs.json";

    private const string Attachments = "attachments/";
    private const int LongestPath = 200;

    /// <summary>Path of a record.</summary>
    /// <param name="kind">Kind of the record.</param>
    /// <param name="id">The record.</param>
    public static string Record(string kind, Guid id) =>
        $"records/{LedgerText.Kind(kind, nameof(kind))}/{Text(id)}.json";

    /// <summary>Path of a ledger entry: at least ten digits, so that names sort as numbers do.</summary>
    /// <param name="number">Number of the entry.</param>
    public static string Entry(long number) =>
        $"ledger/{number.ToString("D10", CultureInfo.InvariantCulture)}.json";

    /// <summary>Path of a run's process log.</summary>
    /// <param name="runId">The weld run.</param>
    public static string Log(Guid runId) => $"logs/{Text(runId)}.csv";

    /// <summary>Path of an attachment.</summary>
    /// <param name="sha256">Its SHA-256, 64 lower-case hexadecimal digits.</param>
    /// <param name="extension">Without a dot: 1 to 8 of a-z and 0-9.</param>
    public static string Attachment(string sha256, string extension)
    {
        ArgumentNullException.ThrowIfNull(extension);
        if (extension.Length is < 1 or > 8 || !extension.All(IsLowerOrDigit))
        {
            throw new ArgumentException("1 to 8 of a-z and 0-9.", nameof(extension));
        }
        return $"{Attachments}{LedgerText.Sha256Hex(sha256, nameof(sha256))}.{extension}";
    }

    /// <summary>Whether a path is that of an attachment.</summary>
    /// <param name="path">The path.</param>
    /// <param name="sha256">Its SHA-256, 64 lower-case hexadecimal digits; null for any.</param>
    public static bool IsAttachment(string path, string? sha256 = null)
    {
        ArgumentNullException.ThrowIfNull(path);
        var start = sha256 is null ? Attachments : $"{Attachments}{sha256}.";
        return path.StartsWith(start, StringComparison.Ordinal);
    }

    /// <summary>
    /// Whether the path can be unpacked anywhere without harm: relative, at most 200 characters, parts
    /// of A-Z a-z 0-9 . _ - with single slashes between, no part that begins or ends with a dot.
    /// </summary>
    /// <param name="path">The path.</param>
    public static bool IsSafe(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return path.Length <= LongestPath && path.Split('/').All(IsSafePart);
    }

    private static bool IsSafePart(string part) =>
        part.Length > 0
        && part[0] != '.'
        && part[^1] != '.'
        && part.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '_' or '-');

    private static bool IsLowerOrDigit(char c) =>
        char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c);

    private static string Text(Guid id) => id.ToString("D", CultureInfo.InvariantCulture);
}
