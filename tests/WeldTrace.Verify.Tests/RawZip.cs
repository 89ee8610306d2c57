using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;

namespace WeldTrace.Verify.Tests;

/// <summary>Makes ZIPs that no honest program makes; field places from APPNOTE.TXT 4.3.7, 4.3.12, 4.3.16.</summary>
internal static class RawZip
{
    public const int DirectoryFlags = 8;
    public const int DirectoryMethod = 10;
    public const int DirectoryPackedLength = 20;
    public const int DirectoryLength = 24;
    public const int DirectoryAttributes = 38;
    public const int DirectoryHeaderOffset = 42;
    public const int EndFiles = 10;
    public const int EndDirectoryLength = 12;
    public const int EndDirectoryOffset = 16;
    private const uint DirectoryRecord = 0x02014b50;
    private const uint EndRecord = 0x06054b50;

    public static byte[] Of(params (string Name, byte[] Bytes)[] files)
    {
        using var zip = new MemoryStream();
        using (var archive = new ZipArchive(zip, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, bytes) in files)
            {
                using var stream = archive.CreateEntry(name).Open();
                stream.Write(bytes);
            }
        }
        return zip.ToArray();
    }

    /// <summary>Puts a number into the last file's record in the directory.</summary>
    public static byte[] WithDirectoryField(byte[] zip, int field, uint value, int width)
    {
        var copy = (byte[])zip.Clone();
        Put(copy, Find(copy, DirectoryRecord) + field, value, width);
        return copy;
    }

    public static byte[] WithEndField(byte[] zip, int field, uint value, int width)
    {
        var copy = (byte[])zip.Clone();
        Put(copy, Find(copy, EndRecord) + field, value, width);
        return copy;
    }

    /// <summary>Puts another name of the same length everywhere, as a hex editor would.</summary>
    public static byte[] Renamed(byte[] zip, string name, string other)
    {
        var text = Encoding.Latin1.GetString(zip);
        return Encoding.Latin1.GetBytes(text.Replace(name, other, StringComparison.Ordinal));
    }

    /// <summary>Adds an extra field to the last file's record in the directory.</summary>
    public static byte[] WithDirectoryExtra(byte[] zip, ushort id, byte[] data)
    {
        var record = Find(zip, DirectoryRecord);
        var end = Find(zip, EndRecord);
        byte[] extra =
        [
            .. BitConverter.GetBytes(id),
            .. BitConverter.GetBytes((ushort)data.Length),
            .. data,
        ];
        byte[] longer = [.. zip[..end], .. extra, .. zip[end..]];
        Put(longer, record + 30, (uint)extra.Length, 2);
        var length = BitConverter.ToUInt32(zip, end + EndDirectoryLength) + (uint)extra.Length;
        return WithEndField(longer, EndDirectoryLength, length, 4);
    }

    /// <summary>Moves the numbers of the end record into the wide records of large ZIPs.</summary>
    public static byte[] WithWideEnd(byte[] zip)
    {
        var end = Find(zip, EndRecord);
        long files = BitConverter.ToUInt16(zip, end + EndFiles);
        byte[] wide =
        [
            .. BitConverter.GetBytes(0x06064b50u),
            .. BitConverter.GetBytes(44L),
            .. new byte[12],
            .. BitConverter.GetBytes(files),
            .. BitConverter.GetBytes(files),
            .. BitConverter.GetBytes((long)BitConverter.ToUInt32(zip, end + EndDirectoryLength)),
            .. BitConverter.GetBytes((long)BitConverter.ToUInt32(zip, end + EndDirectoryOffset)),
            .. BitConverter.GetBytes(0x07064b50u),
            .. new byte[4],
            .. BitConverter.GetBytes((long)end),
            .. BitConverter.GetBytes(1),
        ];
        byte[] longer = [.. zip[..end], .. wide, .. zip[end..]];
        return WithEndField(longer, EndDirectoryOffset, uint.MaxValue, 4);
    }

    private static int Find(byte[] zip, uint signature)
    {
        Span<byte> mark = stackalloc byte[4];
        BinaryPrimitives.WriteUInt32LittleEndian(mark, signature);
        return zip.AsSpan().LastIndexOf(mark);
    }

    private static void Put(byte[] zip, int at, uint value, int width)
    {
        if (width == 2)
        {
            BinaryPrimitives.WriteUInt16LittleEndian(zip.AsSpan(at), (ushort)value);
        }
        else
        {
            BinaryPrimitives.WriteUInt32LittleEndian(zip.AsSpan(at), value);
        }
    }
}
