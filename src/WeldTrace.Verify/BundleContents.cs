using WeldTrace.Domain.Ledger;
using WeldTrace.Verify.Zip;

namespace WeldTrace.Verify;

/// <summary>What is kept of a bundle after it was read once from start to end.</summary>
internal sealed class BundleContents
{
    private readonly Dictionary<string, UnpackedFile> _files = new(StringComparer.Ordinal);

    /// <summary>Every path of the ZIP, also of files that could not be unpacked.</summary>
    public HashSet<string> Paths { get; } = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<string, UnpackedFile> Files => _files;

    public LedgerFacts Ledger { get; } = new();

    public void Add(UnpackedFile file, ProblemList problems)
    {
        var isEntry = IsEntry(file.Path);
        _files[file.Path] = isEntry ? file with { Document = null } : file;
        if (isEntry)
        {
            ReadEntry(file, problems);
        }
    }

    public byte[]? Document(string path) => _files.GetValueOrDefault(path)?.Document;

    public IEnumerable<UnpackedFile> In(string folder) =>
        _files.Values.Where(file => file.Path.StartsWith(folder, StringComparison.Ordinal));

    /// <summary>Whether a ledger entry belongs under the path.</summary>
    public static bool IsEntry(string path) =>
        path.StartsWith("ledger/", StringComparison.Ordinal)
        && path.EndsWith(".json", StringComparison.Ordinal)
        && path is not (BundlePaths.Checkpoint or BundlePaths.Proofs);

    public static bool IsDocument(string path) =>
        IsEntry(path)
        || path
            is BundlePaths.Manifest
                or BundlePaths.ManifestSignature
                or BundlePaths.SiteKey
                or BundlePaths.Checkpoint
                or BundlePaths.CheckpointSignature
                or BundlePaths.Proofs
                or BundlePaths.Events
                or BundlePaths.Lineage
                or BundlePaths.Compliance;

    private void ReadEntry(UnpackedFile file, ProblemList problems)
    {
        try
        {
            var entry = LedgerEntry.FromCanonicalBytes(file.Document);
            if (BundlePaths.Entry(entry.Number) == file.Path)
            {
                Ledger.Add(entry);
            }
            else
            {
                problems.Add(
                    ProblemKind.Unreadable,
                    file.Path,
                    $"The file holds entry {entry.Number}, which belongs under another name."
                );
            }
        }
        catch (FormatException error)
        {
            problems.Add(ProblemKind.Unreadable, file.Path, error.Message);
        }
    }
}
