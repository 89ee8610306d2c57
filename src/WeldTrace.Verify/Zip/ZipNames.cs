using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify.Zip;

/// <summary>Finds what could harm someone who unpacks the ZIP.</summary>
internal static class ZipNames
{
    private const int KindMask = 0xF000;
    private const int OrdinaryFile = 0x8000;
    private const int Folder = 0x4000;

    public static void Check(IReadOnlyList<ZipItem> items, ProblemList problems)
    {
        // Some systems take names that differ in case only for one file.
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var item in items)
        {
            var reason = Harm(item);
            reason ??= seen.Add(item.Path) ? null : "The name stands in the ZIP twice.";
            if (reason is not null)
            {
                problems.Add(ProblemKind.Refused, item.Name, reason);
            }
        }
    }

    private static string? Harm(ZipItem item)
    {
        if (!BundlePaths.IsSafe(item.Path))
        {
            return "The path could lead out of the folder, or holds characters no bundle uses.";
        }
        if (item.IsEncrypted)
        {
            return "The file is encrypted; a bundle never is.";
        }
        var kind = (item.Attributes >> 16) & KindMask;
        if (kind != 0 && kind != (item.IsFolder ? Folder : OrdinaryFile))
        {
            return "The ZIP marks this as a link or another special file.";
        }
        return item is { IsFolder: true, Length: > 0 } ? "A folder that holds bytes." : null;
    }
}
