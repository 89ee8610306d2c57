using System.Text.Json;
using System.Text.Json.Nodes;

namespace WeldTrace.Domain.Ledger;

/// <summary>The state of a site's ledger at one time: what the site's key signs.</summary>
public sealed record Checkpoint
{
    private const string Format = "weldtrace-checkpoint-1";
    private static readonly JsonLimits Limits = new(16 * 1024, 4);

    /// <summary>Name of the site; one line, 1 to 200 characters.</summary>
    public required string SiteName
    {
        get;
        init => field = LedgerText.Line(value, 200, nameof(SiteName));
    }

    /// <summary>Number of entries, 0 to 2^53 − 1.</summary>
    public required long TreeSize
    {
        get;
        init
        {
            ArgumentOutOfRangeException.ThrowIfNegative(value, nameof(TreeSize));
            ArgumentOutOfRangeException.ThrowIfGreaterThan(value, LedgerEntry.LargestNumber);
            field = value;
        }
    }

    /// <summary>Root of the tree, 64 lower-case hexadecimal digits.</summary>
    public required string RootHex
    {
        get;
        init => field = LedgerText.Sha256Hex(value, nameof(RootHex));
    }

    /// <summary>When the checkpoint was made, in UTC, cut to whole microseconds.</summary>
    public required DateTimeOffset At
    {
        get;
        init => field = LedgerTime.Normalise(value);
    }

    /// <summary>Root of the tree, 32 bytes.</summary>
    public byte[] Root() => Convert.FromHexString(RootHex);

    /// <summary>The checkpoint as canonical JSON.</summary>
    public byte[] ToCanonicalBytes() =>
        CanonicalJson.FromNode(
            new JsonObject
            {
                ["format"] = Format,
                ["site"] = SiteName,
                ["treeSize"] = TreeSize,
                ["root"] = RootHex,
                ["at"] = LedgerTime.Print(At),
            }
        );

    /// <summary>Reads what <see cref="ToCanonicalBytes"/> wrote, and nothing else.</summary>
    /// <param name="utf8">Canonical bytes.</param>
    /// <exception cref="FormatException">Any other form.</exception>
    public static Checkpoint FromCanonicalBytes(ReadOnlyMemory<byte> utf8) =>
        CanonicalDocument.Read(utf8, Limits, Read, checkpoint => checkpoint.ToCanonicalBytes());

    private static Checkpoint Read(JsonElement json) =>
        new()
        {
            SiteName = json.Text("site"),
            TreeSize = json.GetProperty("treeSize").GetInt64(),
            RootHex = json.Text("root"),
            At = LedgerTime.Read(json.Text("at")),
        };
}
