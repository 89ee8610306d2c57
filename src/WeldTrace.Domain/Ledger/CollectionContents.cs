using System.Text.Json;
using System.Text.Json.Nodes;

namespace WeldTrace.Domain.Ledger;

/// <summary>What a collection of history bundles holds: every file but this list and its signature.</summary>
public sealed record CollectionContents
{
    private const string Format = "weldtrace-history-collection";
    private const int Version = 1;

    /// <summary>What the vessels have in common, for instance their lot; one line, 1 to 200 characters.</summary>
    public required string Title
    {
        get;
        init => field = LedgerText.Line(value, LongestTitle, nameof(Title));
    }

    /// <summary>Most characters of a title.</summary>
    public const int LongestTitle = 200;

    /// <summary>Name of the site; one line, 1 to 200 characters.</summary>
    public required string SiteName
    {
        get;
        init => field = LedgerText.Line(value, 200, nameof(SiteName));
    }

    /// <summary>When the collection was finished, in UTC, cut to whole microseconds.</summary>
    public required DateTimeOffset MadeAt
    {
        get;
        init => field = LedgerTime.Normalise(value);
    }

    /// <summary>One bundle of each vessel, at least one, in ordinal order of their paths.</summary>
    /// <exception cref="ArgumentException">A path or a vessel stands twice, or there is none.</exception>
    public required IReadOnlyList<CollectedBundle> Bundles
    {
        get;
        init =>
            field =
                value.Count > 0
                && value.DistinctBy(b => b.File.Path).Count() == value.Count
                && value.DistinctBy(b => b.VesselSerial).Count() == value.Count
                    ? [.. value.OrderBy(b => b.File.Path, StringComparer.Ordinal)]
                    : throw new ArgumentException(
                        "Each vessel stands there once.",
                        nameof(Bundles)
                    );
    }

    /// <summary>The other files, in ordinal order of their paths.</summary>
    /// <exception cref="ArgumentException">A path stands twice.</exception>
    public required IReadOnlyList<BundleFile> Papers
    {
        get;
        init => field = BundleFile.Listed(value, nameof(Papers));
    }

    /// <summary>Every file that is listed.</summary>
    public IEnumerable<BundleFile> Files => Bundles.Select(b => b.File).Concat(Papers);

    /// <summary>The list as canonical JSON.</summary>
    public byte[] ToCanonicalBytes() =>
        CanonicalJson.FromNode(
            new JsonObject
            {
                ["format"] = Format,
                ["version"] = Version,
                ["title"] = Title,
                ["site"] = SiteName,
                ["madeAt"] = LedgerTime.Print(MadeAt),
                ["bundles"] = new JsonArray([.. Bundles.Select(Node)]),
                ["papers"] = new JsonArray([.. Papers.Select(file => file.ToNode())]),
            }
        );

    /// <summary>Reads what <see cref="ToCanonicalBytes"/> wrote, and nothing else.</summary>
    /// <param name="utf8">Canonical bytes.</param>
    /// <exception cref="FormatException">Any other form or version.</exception>
    public static CollectionContents FromCanonicalBytes(ReadOnlyMemory<byte> utf8) =>
        CanonicalDocument.Read(
            utf8,
            JsonLimits.ForRecords,
            Read,
            contents => contents.ToCanonicalBytes()
        );

    private static JsonObject Node(CollectedBundle bundle)
    {
        var node = bundle.File.ToNode();
        node["vesselSerial"] = bundle.VesselSerial;
        return node;
    }

    private static CollectionContents Read(JsonElement json) =>
        new()
        {
            Title = json.Text("title"),
            SiteName = json.Text("site"),
            MadeAt = LedgerTime.Read(json.Text("madeAt")),
            Bundles =
            [
                .. json.GetProperty("bundles")
                    .EnumerateArray()
                    .Select(b => new CollectedBundle
                    {
                        VesselSerial = b.Text("vesselSerial"),
                        File = BundleFile.Read(b),
                    }),
            ],
            Papers = [.. json.GetProperty("papers").EnumerateArray().Select(BundleFile.Read)],
        };
}
