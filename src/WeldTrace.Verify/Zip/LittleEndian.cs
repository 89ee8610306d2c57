using System.Buffers.Binary;

namespace WeldTrace.Verify.Zip;

/// <summary>Reads the numbers of a ZIP.</summary>
internal static class LittleEndian
{
    public static ushort UInt16(this byte[] bytes, int at) =>
        BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(at));

    public static uint UInt32(this byte[] bytes, int at) =>
        BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(at));

    public static long Length(this byte[] bytes, int at)
    {
        var value = BinaryPrimitives.ReadInt64LittleEndian(bytes.AsSpan(at));
        return value >= 0
            ? value
            : throw new RefusedBundleException("", "The ZIP holds an impossible length.");
    }

    public static byte[] ReadAt(this Stream zip, long offset, int length)
    {
        if (offset < 0 || offset > zip.Length - length)
        {
            throw new RefusedBundleException("", "The file is not a ZIP, or is cut short.");
        }
        var bytes = new byte[length];
        zip.Position = offset;
        zip.ReadExactly(bytes);
        return bytes;
    }
}
