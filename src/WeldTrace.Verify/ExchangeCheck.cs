using System.Text.Json;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify;

/// <summary>Looks up in the bundle whatever the files for other systems and the compliance matrix name.</summary>
internal static class ExchangeCheck
{
    private static readonly (string Path, int FromVersion)[] Naming =
    [
        (BundlePaths.Events, 2),
        (BundlePaths.Lineage, 2),
        (BundlePaths.Compliance, 3),
    ];

    public static void Run(BundleContents contents, BundleManifest? manifest, ProblemList problems)
    {
        // With an entry gone or changed, a sound name would look strange.
        if (problems.Any(RecordCheck.IsOfEntry))
        {
            problems.Notes.Add(
                "The files for other systems were not compared: entries are damaged."
            );
            return;
        }

        foreach (var (path, version) in Naming.Where(n => !problems.IsDamaged(n.Path)))
        {
            if (contents.Document(path) is { } bytes)
            {
                Check(path, bytes, contents, manifest, problems);
            }
            else if (manifest?.Version >= version && !contents.Paths.Contains(path))
            {
                problems.Add(ProblemKind.Removed, path, ManifestCheck.OfThisVersion);
            }
        }
    }

    private static void Check(
        string path,
        byte[] bytes,
        BundleContents contents,
        BundleManifest? manifest,
        ProblemList problems
    )
    {
        // A file that the manifest lists is not missing: if it is gone, that is told already.
        var files = contents
            .Files.Values.Select(file => file.Sha256)
            .Concat(manifest?.Files.Select(file => file.Sha256) ?? [])
            .ToHashSet(StringComparer.Ordinal);
        try
        {
            using var json = StrictJson.Parse(bytes, JsonLimits.ForRecords);
            var strange = TextsOf(json.RootElement, PrefixesOf(json.RootElement))
                .Distinct(StringComparer.Ordinal)
                .Where(IsOurs)
                .Select(name => (Name: name, Thing: RecordUri.Read(name)))
                .Where(named => !IsThere(named.Thing, contents, files))
                .Where(named => !IsTold(named.Thing, problems))
                .Select(named => named.Name)
                .ToList();
            foreach (var name in strange)
            {
                problems.Add(
                    ProblemKind.Missing,
                    path,
                    $"It names {name}, which the bundle does not hold."
                );
            }
        }
        catch (CanonicalJsonException error)
        {
            problems.Add(ProblemKind.Unreadable, path, error.Message);
        }
    }

    private static bool IsOurs(string text) =>
        (text.StartsWith(RecordUri.Records, StringComparison.Ordinal) && text != RecordUri.Records)
        || (text.StartsWith(RecordUri.Files, StringComparison.Ordinal) && text != RecordUri.Files);

    /// <summary>Whether a record that names the same file has been found to miss it.</summary>
    private static bool IsTold(NamedThing? thing, ProblemList problems) =>
        thing?.Sha256 is { } sha256
        && problems.Any(p =>
            p.Kind == ProblemKind.Missing && p.Path.EndsWith(sha256, StringComparison.Ordinal)
        );

    private static bool IsThere(
        NamedThing? thing,
        BundleContents contents,
        HashSet<string> files
    ) =>
        thing switch
        {
            { Sha256: { } sha256 } => files.Contains(sha256),
            { Record: { } id } => contents.Ledger.Knows(id, thing.Version),
            _ => false,
        };

    private static Dictionary<string, string> PrefixesOf(JsonElement json) =>
        json.ValueKind == JsonValueKind.Object
        && json.TryGetProperty("prefix", out var prefix)
        && prefix.ValueKind == JsonValueKind.Object
            ? prefix
                .EnumerateObject()
                .Where(p => p.Value.ValueKind == JsonValueKind.String)
                .ToDictionary(p => p.Name, p => p.Value.GetString()!, StringComparer.Ordinal)
            : [];

    /// <summary>Every text and name of a member, with its prefix written out.</summary>
    private static IEnumerable<string> TextsOf(
        JsonElement json,
        IReadOnlyDictionary<string, string> prefixes
    ) =>
        json.ValueKind switch
        {
            JsonValueKind.String => [Whole(json.GetString()!, prefixes)],
            JsonValueKind.Array => json.EnumerateArray().SelectMany(i => TextsOf(i, prefixes)),
            JsonValueKind.Object => json.EnumerateObject()
                .SelectMany(m => TextsOf(m.Value, prefixes).Prepend(Whole(m.Name, prefixes))),
            _ => [],
        };

    private static string Whole(string text, IReadOnlyDictionary<string, string> prefixes)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        return colon > 0 && prefixes.TryGetValue(text[..colon], out var start)
            ? start + text[(colon + 1)..]
            : text;
    }
}
