using System.Text.Json;

namespace WeldTrace.Domain.Ledger;

/// <summary>
/// The files that a record speaks of: attachments by a member of <see cref="AttachmentMembers"/>, process logs by a "csvSha256"
/// member, anywhere in the record, each 64 lower-case hexadecimal digits.
/// </summary>
/// <param name="Attachments">SHA-256 of attachments.</param>
/// <param name="Logs">SHA-256 of process logs as CSV.</param>
public sealed record NamedHashes(IReadOnlySet<string> Attachments, IReadOnlySet<string> Logs)
{
    /// <summary>Names of the members that name an attachment.</summary>
    public static IReadOnlyList<string> AttachmentMembers { get; } =
    ["sha256", "fileSha256", "chartSha256", "lifeEvidenceSha256"];

    /// <summary>Name of the member that names a process log.</summary>
    public const string LogMember = "csvSha256";

    /// <summary>Collects the hashes that a record names.</summary>
    /// <param name="record">JSON text of the record.</param>
    /// <exception cref="CanonicalJsonException">The text is not strict JSON.</exception>
    public static NamedHashes In(string record)
    {
        using var document = StrictJson.Parse(StrictJson.ToUtf8(record), JsonLimits.ForRecords);
        var attachments = new SortedSet<string>(StringComparer.Ordinal);
        var logs = new SortedSet<string>(StringComparer.Ordinal);
        Collect(document.RootElement, attachments, logs);
        return new NamedHashes(attachments, logs);
    }

    private static void Collect(JsonElement json, ISet<string> attachments, ISet<string> logs)
    {
        if (json.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in json.EnumerateArray())
            {
                Collect(item, attachments, logs);
            }
        }
        if (json.ValueKind != JsonValueKind.Object)
        {
            return;
        }
        foreach (var member in json.EnumerateObject())
        {
            var known =
                member.Name == LogMember ? logs
                : AttachmentMembers.Contains(member.Name) ? attachments
                : null;
            if (known is not null && IsHash(member.Value))
            {
                known.Add(member.Value.GetString()!);
            }

            Collect(member.Value, attachments, logs);
        }
    }

    private static bool IsHash(JsonElement json) =>
        json.ValueKind == JsonValueKind.String
        && json.GetString() is { Length: 64 } text
        && text.All(char.IsAsciiHexDigitLower);
}
