using System.Text.Json;
using System.Text.Json.Nodes;

namespace WeldTrace.Domain.Ledger;

/// <summary>One file of a history bundle, as the manifest lists it.</summary>
public sealed record BundleFile
{
    /// <summary>Path inside the bundle; see <see cref="BundlePaths.IsSafe"/>.</summary>
    public required string Path
    {
        get;
        init =>
            field = BundlePaths.IsSafe(value)
                ? value
                : throw new ArgumentException("The path is not safe.", nameof(Path));
    }

    /// <summary>Length in bytes.</summary>
    public required long Bytes
    {
        get;
        init
        {
            ArgumentOutOfRangeException.ThrowIfNegative(value, nameof(Bytes));
            field = value;
        }
    }

    /// <summary>SHA-256 of the file, 64 lower-case hexadecimal digits.</summary>
    public required string Sha256
    {
        get;
        init => field = LedgerText.Sha256Hex(value, nameof(Sha256));
    }

    /// <summary>The files in ordinal order of their paths.</summary>
    /// <param name="files">Files.</param>
    /// <param name="name">What they are to whoever lists them.</param>
    /// <exception cref="ArgumentException">A path stands twice.</exception>
    internal static IReadOnlyList<BundleFile> Listed(
        IReadOnlyList<BundleFile> files,
        string name
    ) =>
        files.DistinctBy(file => file.Path).Count() == files.Count
            ? [.. files.OrderBy(file => file.Path, StringComparer.Ordinal)]
            : throw new ArgumentException("A path stands twice.", name);

    internal JsonObject ToNode() =>
        new()
        {
            ["path"] = Path,
            ["bytes"] = Bytes,
            ["sha256"] = Sha256,
        };

    internal static BundleFile Read(JsonElement json) =>
        new()
        {
            Path = json.Text("path"),
            Bytes = json.GetProperty("bytes").GetInt64(),
            Sha256 = json.Text("sha256"),
        };
}
