using System.IO.Compression;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify;

/// <summary>Finds what could harm someone who unpacks the ZIP.</summary>
internal static class ZipNames
{
    private const int KindMask = 0xF000;
    private const int OrdinaryFile = 0x8000;
    private const int Folder = 0x4000;

    public static IReadOnlyList<ZipArchiveEntry> Check(
        IReadOnlyCollection<ZipArchiveEntry> entries,
        ProblemList problems
    )
    {
        // Some systems take names that differ in case only for one file.
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var entry in entries)
        {
            var reason = Harm(entry);
            reason ??= seen.Add(Name(entry)) ? null : "The name stands in the ZIP twice.";
            if (reason is not null)
            {
                problems.Add(ProblemKind.Refused, entry.FullName, reason);
            }
        }
        return [.. entries.Where(entry => !IsFolder(entry))];
    }

    private static string? Harm(ZipArchiveEntry entry)
    {
        if (!BundlePaths.IsSafe(Name(entry)))
        {
            return "The path could lead out of the folder, or holds characters no bundle uses.";
        }
        if (entry.IsEncrypted)
        {
            return "The file is encrypted; a bundle never is.";
        }
        var kind = (entry.ExternalAttributes >> 16) & KindMask;
        var expected = IsFolder(entry) ? Folder : OrdinaryFile;
        if (kind != 0 && kind != expected)
        {
            return "The ZIP marks this as a link or another special file.";
        }
        return IsFolder(entry) && entry.CompressedLength > 2 ? "A folder that holds bytes." : null;
    }

    private static bool IsFolder(ZipArchiveEntry entry) => entry.FullName.EndsWith('/');

    private static string Name(ZipArchiveEntry entry) =>
        IsFolder(entry) ? entry.FullName[..^1] : entry.FullName;
}
