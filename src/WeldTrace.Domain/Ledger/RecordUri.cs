using System.Buffers.Text;
using System.Globalization;

namespace WeldTrace.Domain.Ledger;

/// <summary>
/// How records, their versions, the acts on them and files are named to other systems: private URIs that need no registered
/// prefix, the same in every bundle of the site (urn:uuid of RFC 9562, ni of RFC 6920).
/// </summary>
public static class RecordUri
{
    /// <summary>What every name of a record begins with.</summary>
    public const string Records = "urn:uuid:";

    /// <summary>What every name of a file begins with.</summary>
    public const string Files = "ni:///sha-256;";

    private const string VersionMark = "#v";
    private const string ActMark = "#act";

    /// <summary>Name of a record, or of a person.</summary>
    /// <param name="id">The record or person.</param>
    public static string Of(Guid id) => Records + id.ToString("D", CultureInfo.InvariantCulture);

    /// <summary>Name of one version of a record.</summary>
    /// <param name="id">The record.</param>
    /// <param name="version">From 1.</param>
    public static string Version(Guid id, int version) => Of(id) + VersionMark + Text(version);

    /// <summary>Name of the act that made a version of a record.</summary>
    /// <param name="id">The record.</param>
    /// <param name="version">From 1.</param>
    public static string Act(Guid id, int version) => Of(id) + ActMark + Text(version);

    /// <summary>Name of a file by its hash.</summary>
    /// <param name="sha256">64 lower-case hexadecimal digits.</param>
    public static string File(string sha256) =>
        Files
        + Base64Url.EncodeToString(
            Convert.FromHexString(LedgerText.Sha256Hex(sha256, nameof(sha256)))
        );

    /// <summary>Reads a name that this class wrote; null for any other text.</summary>
    /// <param name="text">Text.</param>
    public static NamedThing? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.StartsWith(Files, StringComparison.Ordinal))
        {
            return ReadFile(text[Files.Length..]);
        }

        if (!text.StartsWith(Records, StringComparison.Ordinal))
        {
            return null;
        }

        var name = text[Records.Length..].Split('#', 2);
        if (!Guid.TryParseExact(name[0], "D", out var id))
        {
            return null;
        }

        return name.Length == 1 ? new NamedThing(id, null, null) : ReadVersion(id, '#' + name[1]);
    }

    private static NamedThing? ReadVersion(Guid id, string mark)
    {
        var digits =
            mark.StartsWith(ActMark, StringComparison.Ordinal) ? mark[ActMark.Length..]
            : mark.StartsWith(VersionMark, StringComparison.Ordinal) ? mark[VersionMark.Length..]
            : "";
        return int.TryParse(
            digits,
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var version
        )
            ? new NamedThing(id, version, null)
            : null;
    }

    private static NamedThing? ReadFile(string digest)
    {
        var bytes = new byte[32];
        return
            digest.Length == 43
            && Base64Url.IsValid(digest)
            && Base64Url.TryDecodeFromChars(digest, bytes, out var written)
            && written == bytes.Length
            ? new NamedThing(null, null, Convert.ToHexStringLower(bytes))
            : null;
    }

    private static string Text(int version)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(version, 1);
        return version.ToString(CultureInfo.InvariantCulture);
    }
}

/// <summary>What a name means.</summary>
/// <param name="Record">The record or person; null for a file.</param>
/// <param name="Version">Its version, or the version that an act made; null for the record as a whole.</param>
/// <param name="Sha256">Hash of the file, lower-case hexadecimal; null for a record.</param>
public sealed record NamedThing(Guid? Record, int? Version, string? Sha256);
