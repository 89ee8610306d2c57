using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify;

/// <summary>Compares the records, logs and attachments with what the ledger entries say of them.</summary>
internal static class RecordCheck
{
    private const string Attachments = "attachments/";
    private const string Logs = "logs/";

    public static void Run(BundleContents contents, BundleManifest? manifest, ProblemList problems)
    {
        // With an entry gone or changed, a sound record would look wrong beside an older entry.
        if (problems.Any(IsOfEntry))
        {
            problems.Notes.Add("Records were not compared with the ledger: entries are damaged.");
            return;
        }
        CompareRecords(contents, manifest, problems);
        FindUnnamed(contents, Attachments, problems);
        FindUnnamed(contents, Logs, problems);
        if (manifest is not null)
        {
            FindMissing(contents, manifest, problems);
        }
    }

    internal static bool IsOfEntry(BundleProblem problem) =>
        BundleContents.IsEntry(problem.Path) && problem.Kind != ProblemKind.Proof;

    private static void CompareRecords(
        BundleContents contents,
        BundleManifest? manifest,
        ProblemList problems
    )
    {
        var newest = contents.Ledger.Newest;
        foreach (var file in contents.In("records/"))
        {
            if (!newest.TryGetValue(file.Path, out var entry))
            {
                problems.Add(
                    ProblemKind.Record,
                    file.Path,
                    "No ledger entry speaks of this record."
                );
            }
            else if (entry.ContentSha256 != file.Sha256)
            {
                problems.Add(
                    ProblemKind.Record,
                    file.Path,
                    $"The record differs from its newest entry, {BundlePaths.Entry(entry.Number)}."
                );
            }
        }
        var own = newest.Where(pair =>
            manifest is null || pair.Value.Vessels.Contains(manifest.VesselId)
        );
        foreach (var (path, entry) in own.Where(pair => !contents.Paths.Contains(pair.Key)))
        {
            if (!problems.IsDamaged(path))
            {
                problems.Add(
                    ProblemKind.Missing,
                    path,
                    $"{BundlePaths.Entry(entry.Number)} speaks of this record of the vessel."
                );
            }
        }
    }

    private static void FindUnnamed(BundleContents contents, string folder, ProblemList problems)
    {
        var files = contents.In(folder).Where(file => !problems.IsDamaged(file.Path));
        foreach (var file in files.Where(file => !contents.Ledger.Names(folder, file.Sha256)))
        {
            problems.Add(
                ProblemKind.Unnamed,
                file.Path,
                "No ledger entry names a file of this hash."
            );
        }
    }

    // A hash that the manifest lists is not missing: if its file is, that is told already.
    private static void FindMissing(
        BundleContents contents,
        BundleManifest manifest,
        ProblemList problems
    )
    {
        var present = manifest
            .Files.Select(file => file.Sha256)
            .Concat(contents.Files.Values.Select(file => file.Sha256))
            .ToHashSet(StringComparer.Ordinal);
        var own = contents.Ledger.Newest.Where(pair =>
            pair.Value.Vessels.Contains(manifest.VesselId)
        );
        foreach (var (record, entry) in own)
        {
            foreach (var hash in entry.Named.Attachments.Except(present))
            {
                problems.Add(ProblemKind.Missing, Attachments + hash, $"{record} names this file.");
            }
            foreach (var hash in entry.Named.Logs.Except(present))
            {
                problems.Add(ProblemKind.Missing, Logs + hash, $"{record} names this process log.");
            }
        }
    }
}
