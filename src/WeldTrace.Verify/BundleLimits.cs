namespace WeldTrace.Verify;

/// <summary>How much of a bundle is unpacked before it is refused.</summary>
public sealed record BundleLimits
{
    private const long Mebibyte = 1024 * 1024;

    /// <summary>Most files in one bundle.</summary>
    public int Files { get; init; } = 50_000;

    /// <summary>Largest single file, unpacked, in bytes.</summary>
    public long FileBytes { get; init; } = 2048 * Mebibyte;

    /// <summary>Largest JSON document, signature or key, unpacked, in bytes.</summary>
    public long DocumentBytes { get; init; } = 17 * Mebibyte;

    /// <summary>All files together, unpacked, in bytes.</summary>
    public long TotalBytes { get; init; } = 16_384 * Mebibyte;

    /// <summary>Most bytes that one packed byte may become, in files above <see cref="RatioFrom"/>.</summary>
    public long Ratio { get; init; } = 300;

    /// <summary>Size in bytes from which the ratio is looked at.</summary>
    public long RatioFrom { get; init; } = 4 * Mebibyte;
}
