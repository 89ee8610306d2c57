using System.Text.Json;
using System.Text.Json.Nodes;

namespace WeldTrace.Domain.Ledger;

/// <summary>The proofs of several entries against one tree.</summary>
/// <param name="TreeSize">Number of entries of that tree.</param>
/// <param name="Proofs">One for each entry, by rising number.</param>
public sealed record InclusionProofs(long TreeSize, IReadOnlyList<InclusionProof> Proofs)
{
    private const string Format = "weldtrace-proofs-1";

    /// <summary>The proofs as canonical JSON.</summary>
    public byte[] ToCanonicalBytes() =>
        CanonicalJson.FromNode(
            new JsonObject
            {
                ["format"] = Format,
                ["treeSize"] = TreeSize,
                ["proofs"] = new JsonArray([.. Proofs.Select(Node)]),
            }
        );

    /// <summary>Reads what <see cref="ToCanonicalBytes"/> wrote, and nothing else.</summary>
    /// <param name="utf8">Canonical bytes.</param>
    /// <exception cref="FormatException">Any other form, or an entry with two proofs.</exception>
    public static InclusionProofs FromCanonicalBytes(ReadOnlyMemory<byte> utf8) =>
        CanonicalDocument.Read(
            utf8,
            JsonLimits.ForRecords,
            Read,
            proofs => proofs.ToCanonicalBytes()
        );

    private static JsonNode Node(InclusionProof proof) =>
        new JsonObject
        {
            ["number"] = proof.Number,
            ["path"] = new JsonArray([
                .. proof.Path.Select(hash => JsonValue.Create(Convert.ToHexStringLower(hash))),
            ]),
        };

    private static InclusionProofs Read(JsonElement json)
    {
        var proofs = json.GetProperty("proofs").EnumerateArray().Select(ReadProof).ToList();
        return proofs.Zip(proofs.Skip(1)).All(pair => pair.First.Number < pair.Second.Number)
            ? new InclusionProofs(json.GetProperty("treeSize").GetInt64(), proofs)
            : throw new FormatException("The proofs must stand by rising number, each once.");
    }

    private static InclusionProof ReadProof(JsonElement json) =>
        new(
            json.GetProperty("number").GetInt64(),
            [.. json.GetProperty("path").EnumerateArray().Select(hash => hash.Hash())]
        );
}
