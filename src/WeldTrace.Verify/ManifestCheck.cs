using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify;

/// <summary>Compares the files with the manifest.</summary>
internal static class ManifestCheck
{
    public const string OfThisVersion = "Every bundle of this version has this file.";

    private static readonly string[] Always =
    [
        BundlePaths.Manifest,
        BundlePaths.ManifestSignature,
        BundlePaths.SiteKey,
        BundlePaths.Traveler,
        BundlePaths.Checkpoint,
        BundlePaths.CheckpointSignature,
        BundlePaths.Proofs,
    ];

    private static readonly string[] FromVersion3 =
    [
        BundlePaths.BundleSchema,
        BundlePaths.ComplianceTable,
    ];

    public static BundleManifest? Run(BundleContents contents, ProblemList problems)
    {
        foreach (var path in Always.Where(path => !contents.Paths.Contains(path)))
        {
            problems.Add(ProblemKind.Removed, path, "Every bundle has this file.");
        }
        var manifest = Read(contents, problems);
        if (manifest is null)
        {
            problems.Notes.Add(
                "The files were not compared: the manifest is missing or unreadable."
            );
            return null;
        }
        Compare(contents, manifest, problems);
        foreach (
            var path in FromVersion3.Where(path =>
                manifest.Version > 2 && !contents.Paths.Contains(path)
            )
        )
        {
            problems.Add(ProblemKind.Removed, path, OfThisVersion);
        }
        return manifest;
    }

    private static BundleManifest? Read(BundleContents contents, ProblemList problems)
    {
        if (contents.Document(BundlePaths.Manifest) is not { } bytes)
        {
            return null;
        }
        try
        {
            return BundleManifest.FromCanonicalBytes(bytes);
        }
        catch (FormatException error)
        {
            problems.Add(ProblemKind.Unreadable, BundlePaths.Manifest, error.Message);
            return null;
        }
    }

    private static void Compare(
        BundleContents contents,
        BundleManifest manifest,
        ProblemList problems
    )
    {
        foreach (var file in manifest.Files)
        {
            if (!contents.Paths.Contains(file.Path))
            {
                problems.Add(ProblemKind.Removed, file.Path, "The manifest lists this file.");
            }
            else if (
                contents.Files.TryGetValue(file.Path, out var found)
                && (found.Sha256 != file.Sha256 || found.Bytes != file.Bytes)
            )
            {
                problems.Add(
                    ProblemKind.Changed,
                    file.Path,
                    $"SHA-256 {found.Sha256}; the manifest lists {file.Sha256}."
                );
            }
        }
        var listed = manifest.Files.Select(file => file.Path);
        string[] own = [BundlePaths.Manifest, BundlePaths.ManifestSignature];
        foreach (
            var path in contents.Paths.Except(listed.Concat(own)).Order(StringComparer.Ordinal)
        )
        {
            problems.Add(ProblemKind.Added, path, "The manifest does not list this file.");
        }
    }
}
