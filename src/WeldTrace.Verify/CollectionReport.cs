using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify;

/// <summary>What the verifier found in one bundle of a collection.</summary>
/// <param name="Path">Path of the bundle in the collection.</param>
/// <param name="VesselSerial">The vessel, as the list of contents names it.</param>
/// <param name="Report">What was found in it.</param>
public sealed record CollectedReport(string Path, string VesselSerial, BundleReport Report);

/// <summary>What the verifier found in a collection of bundles.</summary>
public sealed record CollectionReport
{
    /// <summary>Everything that is wrong with the collection itself, apart from what is wrong inside its bundles.</summary>
    public required IReadOnlyList<BundleProblem> Problems { get; init; }

    /// <summary>Checks that could not be made because of the problems.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>The list of contents, if it could be read.</summary>
    public CollectionContents? Contents { get; init; }

    /// <summary>Fingerprint of the key in the collection, if it could be read.</summary>
    public string? Fingerprint { get; init; }

    /// <summary>Each bundle that was opened, in the order of the list.</summary>
    public IReadOnlyList<CollectedReport> Bundles { get; init; } = [];

    /// <summary>Whether every check was made and passed, in every bundle too.</summary>
    public bool IsVerified =>
        Problems.Count == 0
        && Contents is not null
        && Bundles.Count == Contents.Bundles.Count
        && Bundles.All(b => b.Report.IsVerified);
}
