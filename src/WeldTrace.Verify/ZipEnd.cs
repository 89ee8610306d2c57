using System.Buffers.Binary;

namespace WeldTrace.Verify;

/// <summary>
/// Looks at the end records of a ZIP (APPNOTE.TXT 4.3.14 to 4.3.16) before anything else reads it:
/// bounds the directory, and refuses bytes after or between the records.
/// </summary>
internal static class ZipEnd
{
    private const int EndLength = 22;
    private const int LocatorLength = 20;
    private const int End64Length = 56;
    private const uint EndSignature = 0x06054b50;
    private const uint LocatorSignature = 0x07064b50;
    private const uint End64Signature = 0x06064b50;
    private const int LongestDirectoryRecord = 1024;

    public static void Check(Stream zip, BundleLimits limits)
    {
        var end = ReadAt(zip, zip.Length - EndLength, EndLength);
        if (UInt32(end, 0) != EndSignature || UInt16(end, 20) != 0)
        {
            throw Refuse("The file is not a ZIP, is cut short, or has bytes after its end.");
        }
        var directory = new Directory(
            UInt16(end, 10),
            UInt32(end, 12),
            UInt32(end, 16),
            zip.Length - EndLength
        );
        if (directory.Files == ushort.MaxValue || directory.NeedsWideFields)
        {
            directory = ReadWide(zip, zip.Length - EndLength - LocatorLength);
        }
        if (
            directory.Files > limits.Files
            || directory.Bytes > limits.Files * LongestDirectoryRecord
        )
        {
            throw Refuse($"The ZIP holds more than {limits.Files} files.");
        }
        if (
            directory.Offset > directory.EndsAt
            || directory.Bytes != directory.EndsAt - directory.Offset
        )
        {
            throw Refuse("The directory of the ZIP is not where its end record says.");
        }
    }

    private static Directory ReadWide(Stream zip, long at)
    {
        var locator = ReadAt(zip, at, LocatorLength);
        var offset = Int64(locator, 8);
        if (UInt32(locator, 0) != LocatorSignature || offset < 0 || offset > at - End64Length)
        {
            throw Refuse("The end records of the ZIP do not fit each other.");
        }
        var end = ReadAt(zip, offset, End64Length);
        if (UInt32(end, 0) != End64Signature || Int64(end, 4) != at - offset - 12)
        {
            throw Refuse("The end records of the ZIP do not fit each other.");
        }
        var (files, bytes, start) = (Int64(end, 32), Int64(end, 40), Int64(end, 48));
        return files < 0 || bytes < 0 || start < 0
            ? throw Refuse("The end records of the ZIP hold impossible numbers.")
            : new Directory(files, bytes, start, offset);
    }

    private static byte[] ReadAt(Stream zip, long offset, int length)
    {
        if (offset < 0)
        {
            throw Refuse("The file is not a ZIP, or is cut short.");
        }
        var bytes = new byte[length];
        zip.Position = offset;
        zip.ReadExactly(bytes);
        return bytes;
    }

    private static ushort UInt16(byte[] bytes, int at) =>
        BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(at));

    private static uint UInt32(byte[] bytes, int at) =>
        BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(at));

    private static long Int64(byte[] bytes, int at) =>
        BinaryPrimitives.ReadInt64LittleEndian(bytes.AsSpan(at));

    private static RefusedBundleException Refuse(string message) => new("", message);

    private sealed record Directory(long Files, long Bytes, long Offset, long EndsAt)
    {
        public bool NeedsWideFields => Bytes == uint.MaxValue || Offset == uint.MaxValue;
    }
}
