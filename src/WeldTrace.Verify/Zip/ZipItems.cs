using System.Text;

namespace WeldTrace.Verify.Zip;

/// <summary>Reads the directory of a ZIP (APPNOTE.TXT 4.3.12).</summary>
internal static class ZipItems
{
    private const uint RecordSignature = 0x02014b50;
    private const int RecordLength = 46;
    private const int WideFieldsId = 0x0001;
    private const int OtherNameId = 0x7075;

    public static IReadOnlyList<ZipItem> Read(Stream zip, ZipDirectory directory)
    {
        var bytes = zip.ReadAt(directory.Offset, checked((int)directory.Bytes));
        var items = new List<ZipItem>();
        var at = 0;
        while (at < bytes.Length)
        {
            var (item, length) = ReadOne(bytes, at);
            items.Add(item);
            at += length;
        }
        return items.Count == directory.Files
            ? items
            : throw Refuse("The directory of the ZIP has another number of files than it says.");
    }

    private static (ZipItem Item, int Length) ReadOne(byte[] bytes, int at)
    {
        if (bytes.Length - at < RecordLength || bytes.UInt32(at) != RecordSignature)
        {
            throw Refuse("The directory of the ZIP is damaged.");
        }
        var (nameLength, extraLength) = (bytes.UInt16(at + 28), bytes.UInt16(at + 30));
        var length = RecordLength + nameLength + extraLength + bytes.UInt16(at + 32);
        if (length > bytes.Length - at || bytes.UInt16(at + 34) != 0)
        {
            throw Refuse("The directory of the ZIP is damaged.");
        }
        var name = at + RecordLength;
        var item = new ZipItem
        {
            Name = Encoding.UTF8.GetString(bytes, name, nameLength),
            Flags = bytes.UInt16(at + 8),
            Method = bytes.UInt16(at + 10),
            PackedLength = bytes.UInt32(at + 20),
            Length = bytes.UInt32(at + 24),
            HeaderOffset = bytes.UInt32(at + 42),
            Attributes = bytes.UInt32(at + 38),
        };
        var extra = bytes[(name + nameLength)..(name + nameLength + extraLength)];
        return (WithExtra(item, extra), length);
    }

    private static ZipItem WithExtra(ZipItem item, byte[] extra)
    {
        for (var at = 0; at + 4 <= extra.Length; )
        {
            var (id, end) = (extra.UInt16(at), at + 4 + extra.UInt16(at + 2));
            if (end > extra.Length || id == OtherNameId)
            {
                throw new RefusedBundleException(
                    item.Name,
                    "The ZIP gives the file a second name, or its record is damaged."
                );
            }
            if (id == WideFieldsId)
            {
                item = WithWideFields(item, extra[(at + 4)..end]);
            }
            at = end;
        }
        return item;
    }

    private static ZipItem WithWideFields(ZipItem item, byte[] fields)
    {
        var at = 0;
        long Next(long narrow)
        {
            if (narrow != uint.MaxValue)
            {
                return narrow;
            }
            at += sizeof(long);
            return at <= fields.Length
                ? fields.Length(at - sizeof(long))
                : throw Refuse("The directory of the ZIP is damaged.");
        }
        // The order is that of APPNOTE.TXT 4.5.3.
        var length = Next(item.Length);
        var packed = Next(item.PackedLength);
        var offset = Next(item.HeaderOffset);
        return item with { Length = length, PackedLength = packed, HeaderOffset = offset };
    }

    private static RefusedBundleException Refuse(string message) => new("", message);
}
