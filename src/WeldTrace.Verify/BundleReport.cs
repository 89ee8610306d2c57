using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify;

/// <summary>What the verifier found.</summary>
public sealed record BundleReport
{
    /// <summary>Everything that is wrong.</summary>
    public required IReadOnlyList<BundleProblem> Problems { get; init; }

    /// <summary>Checks that could not be made because of the problems.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>The manifest, if it could be read.</summary>
    public BundleManifest? Manifest { get; init; }

    /// <summary>The checkpoint, if it could be read and its signature fits.</summary>
    public Checkpoint? Checkpoint { get; init; }

    /// <summary>Fingerprint of the key in the bundle, if it could be read.</summary>
    public string? Fingerprint { get; init; }

    /// <summary>Number of ledger entries in the bundle.</summary>
    public int Entries { get; init; }

    /// <summary>Whether every check was made and passed.</summary>
    public bool IsVerified => Problems.Count == 0 && Manifest is not null && Checkpoint is not null;
}
