using System.Text;

namespace WeldTrace.Verify.Zip;

/// <summary>
/// Holds the files' own headers (APPNOTE.TXT 4.3.7) to the directory: programs that read one or the
/// other must see the same. The files must fill the ZIP without overlap and without gaps.
/// </summary>
internal static class ZipLayout
{
    private const uint HeaderSignature = 0x04034b50;
    private const int HeaderLength = 30;
    private const int LengthsFollow = 0x0008;

    /// <returns>The items with the place of their packed bytes.</returns>
    public static IReadOnlyList<ZipItem> Check(
        Stream zip,
        IReadOnlyList<ZipItem> items,
        ZipDirectory directory
    )
    {
        var placed = new List<ZipItem>();
        long next = 0;
        foreach (var item in items.OrderBy(item => item.HeaderOffset))
        {
            var gap = item.HeaderOffset - next;
            RequireGap(gap, placed.LastOrDefault(), item.Name);
            var located = Locate(zip, item);
            placed.Add(located);
            next = located.DataOffset + located.PackedLength;
            if (next > directory.Offset)
            {
                throw new RefusedBundleException(item.Name, "The file runs into the directory.");
            }
        }
        RequireGap(directory.Offset - next, placed.LastOrDefault(), "");
        return placed;
    }

    // After a file whose lengths were not known when it was begun stand 12 to 24 bytes with them.
    private static void RequireGap(long gap, ZipItem? before, string name)
    {
        var lengthsFollow = before is not null && (before.Flags & LengthsFollow) != 0;
        if (lengthsFollow ? gap is not (12 or 16 or 20 or 24) : gap != 0)
        {
            throw new RefusedBundleException(
                name,
                "Files overlap in the ZIP, or bytes lie between."
            );
        }
    }

    private static ZipItem Locate(Stream zip, ZipItem item)
    {
        var header = zip.ReadAt(item.HeaderOffset, HeaderLength);
        var nameLength = header.UInt16(26);
        var name = zip.ReadAt(item.HeaderOffset + HeaderLength, nameLength);
        var same =
            header.UInt32(0) == HeaderSignature
            && header.UInt16(6) == item.Flags
            && header.UInt16(8) == item.Method
            && Encoding.UTF8.GetString(name) == item.Name;
        return same
            ? item with
            {
                DataOffset = item.HeaderOffset + HeaderLength + nameLength + header.UInt16(28),
            }
            : throw new RefusedBundleException(
                item.Name,
                "The file's own header differs from the directory of the ZIP."
            );
    }
}
