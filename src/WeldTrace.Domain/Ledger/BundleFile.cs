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
}
