namespace WeldTrace.Verify.Zip;

/// <summary>
/// Reads the end records of a ZIP (APPNOTE.TXT 4.3.14 to 4.3.16): bounds the directory before it is
/// read, and refuses bytes after or between the records.
/// </summary>
internal static class ZipEnd
{
    private const int EndLength = 22;
    private const int LocatorLength = 20;
    private const int End64Length = 56;
    private const uint EndSignature = 0x06054b50;
    private const uint LocatorSignature = 0x07064b50;
    private const uint End64Signature = 0x06064b50;
    private const int LongestRecord = 1024;

    public static ZipDirectory Find(Stream zip, BundleLimits limits)
    {
        var at = zip.Length - EndLength;
        var end = zip.ReadAt(at, EndLength);
        if (end.UInt32(0) != EndSignature || end.UInt16(20) != 0)
        {
            throw Refuse("The file is not a ZIP, is cut short, or has bytes after its end.");
        }
        if (end.UInt32(4) != 0 || end.UInt16(8) != end.UInt16(10))
        {
            throw Refuse("The ZIP is one part of several.");
        }
        var directory = new ZipDirectory(end.UInt16(10), end.UInt32(12), end.UInt32(16), at);
        if (NeedsWideFields(directory))
        {
            directory = ReadWide(zip, at - LocatorLength);
        }
        if (directory.Files > limits.Files || directory.Bytes > (long)limits.Files * LongestRecord)
        {
            throw Refuse($"The ZIP holds more than {limits.Files} files.");
        }
        return
            directory.Offset <= directory.EndsAt
            && directory.Bytes == directory.EndsAt - directory.Offset
            ? directory
            : throw Refuse("The directory of the ZIP is not where its end record says.");
    }

    private static bool NeedsWideFields(ZipDirectory directory) =>
        directory.Files == ushort.MaxValue
        || directory.Bytes == uint.MaxValue
        || directory.Offset == uint.MaxValue;

    private static ZipDirectory ReadWide(Stream zip, long at)
    {
        var locator = zip.ReadAt(at, LocatorLength);
        if (locator.UInt32(0) != LocatorSignature)
        {
            throw Refuse("The end records of the ZIP do not fit each other.");
        }
        var offset = locator.Length(8);
        var end = zip.ReadAt(offset, End64Length);
        var fits =
            end.UInt32(0) == End64Signature
            && end.Length(4) == at - offset - 12
            && end.Length(16) == 0
            && end.Length(24) == end.Length(32);
        return fits
            ? new ZipDirectory(end.Length(32), end.Length(40), end.Length(48), offset)
            : throw Refuse("The end records of the ZIP do not fit each other.");
    }

    private static RefusedBundleException Refuse(string message) => new("", message);
}
