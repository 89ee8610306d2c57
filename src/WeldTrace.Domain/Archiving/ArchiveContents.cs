using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Archiving;

/// <summary>The process log of a run that an archive holds.</summary>
/// <param name="RunId">Run.</param>
/// <param name="Hash">SHA-256 of the log as CSV, 64 lower-case hexadecimal digits.</param>
public sealed record ArchivedLog(Guid RunId, string Hash);

/// <summary>What leaves the database when a vessel is archived: the bytes of files, and the samples of process logs.</summary>
/// <param name="Files">SHA-256 of each file, 64 lower-case hexadecimal digits.</param>
/// <param name="Logs">Process logs.</param>
public sealed record ArchiveContents(IReadOnlyList<string> Files, IReadOnlyList<ArchivedLog> Logs)
{
    /// <summary>Whether nothing would leave.</summary>
    public bool IsEmpty => Files.Count == 0 && Logs.Count == 0;

    /// <summary>A reason for each part that a bundle does not hold with the same hash; none when it holds all.</summary>
    /// <param name="bundle">What the bundle holds, verified.</param>
    public IReadOnlyList<Refusal> MissingFrom(BundleManifest bundle)
    {
        ArgumentNullException.ThrowIfNull(bundle);
        var hashes = bundle.Files.ToDictionary(f => f.Path, f => f.Sha256);
        var files = hashes
            .Where(f => BundlePaths.IsAttachment(f.Key))
            .Select(f => f.Value)
            .ToHashSet(StringComparer.Ordinal);
        return
        [
            .. Files.Where(f => !files.Contains(f)).Select(f => Missing($"the file {f}")),
            .. Logs.Where(l => hashes.GetValueOrDefault(BundlePaths.Log(l.RunId)) != l.Hash)
                .Select(l => Missing($"the process log of run {l.RunId}")),
        ];
    }

    private static Refusal Missing(string what) =>
        new("bundle", $"The bundle does not hold {what}; write the bundle again.");
}
