using System.Globalization;
using System.Text.Json.Nodes;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Documents.Exchange;

/// <summary>A document of W3C PROV-JSON while it is put together.</summary>
internal sealed class ProvDocument
{
    private const string RecordPrefix = "record";
    private const string FilePrefix = "file";

    private readonly SortedDictionary<string, JsonObject> _parts = new(StringComparer.Ordinal);
    private readonly HashSet<(string Kind, string First)> _related = [];
    private int _relations;

    public static string Name(Guid id) => Short(RecordUri.Of(id));

    public static string Version(Guid id, int version) => Short(RecordUri.Version(id, version));

    public static string Version(LedgerEntry entry) => Version(entry.RecordId, entry.RecordVersion);

    public static string Act(LedgerEntry entry) =>
        Short(RecordUri.Act(entry.RecordId, entry.RecordVersion));

    public static string File(string sha256) =>
        FilePrefix + ":" + RecordUri.File(sha256)[RecordUri.Files.Length..];

    public static JsonObject Type(string prefix, string name) =>
        new() { ["$"] = prefix + ":" + name, ["type"] = "prov:QUALIFIED_NAME" };

    /// <summary>Adds an entity, activity or agent, unless it is there.</summary>
    public void Add(string kind, string name, params (string Name, JsonNode Value)[] attributes)
    {
        var part = Part(kind);
        if (!part.ContainsKey(name))
        {
            part[name] = new JsonObject(
                attributes.Select(a => KeyValuePair.Create(a.Name, (JsonNode?)a.Value))
            );
        }
    }

    /// <summary>Adds a relation of the named roles; the first is what it is asked for by.</summary>
    public void Relate(string kind, params (string Role, JsonNode Value)[] roles)
    {
        _related.Add((kind, roles[0].Value.ToString()));
        Part(kind)["_:r" + (++_relations).ToString(CultureInfo.InvariantCulture)] = new JsonObject(
            roles.Select(r => KeyValuePair.Create("prov:" + r.Role, (JsonNode?)r.Value))
        );
    }

    public bool HasRelation(string kind, string first) => _related.Contains((kind, first));

    /// <param name="made">What came of it.</param>
    /// <param name="used">What it came from.</param>
    /// <param name="type">Kind of derivation in PROV; null for none.</param>
    public void Derive(string made, string used, string? type = null)
    {
        (string, JsonNode)[] ends = [("generatedEntity", made), ("usedEntity", used)];
        Relate("wasDerivedFrom", type is null ? ends : [.. ends, ("type", Type("prov", type))]);
    }

    public JsonObject ToJson((string Prefix, string Uri) own)
    {
        var json = new JsonObject
        {
            ["prefix"] = new JsonObject
            {
                ["prov"] = "http://www.w3.org/ns/prov#",
                [RecordPrefix] = RecordUri.Records,
                [FilePrefix] = RecordUri.Files,
                [own.Prefix] = own.Uri,
            },
        };
        foreach (var (kind, part) in _parts)
        {
            json[kind] = part;
        }

        return json;
    }

    private JsonObject Part(string kind)
    {
        if (!_parts.TryGetValue(kind, out var part))
        {
            _parts[kind] = part = [];
        }

        return part;
    }

    private static string Short(string uri) => RecordPrefix + ":" + uri[RecordUri.Records.Length..];
}
