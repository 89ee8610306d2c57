using System.Buffers.Binary;
using System.Text;

namespace WeldTrace.Documents.Layout;

/// <summary>Advance widths and coverage of one TrueType face, read from its own tables.</summary>
internal sealed class FontFace
{
    private readonly Dictionary<int, double> _advances;

    public FontFace(string family, byte[] data)
    {
        Family = family;
        Data = data;
        _advances = ReadAdvances(data);
    }

    /// <summary>Name under which the resolver hands the face to the PDF library.</summary>
    public string Family { get; }

    public byte[] Data { get; }

    public bool Covers(Rune character) => _advances.ContainsKey(character.Value);

    /// <summary>Width in points; the PDF library applies no kerning, so the advances add up exactly.</summary>
    public double Width(ReadOnlySpan<char> text, double size)
    {
        var ems = 0.0;
        foreach (var character in text.EnumerateRunes())
        {
            ems += _advances.GetValueOrDefault(character.Value);
        }

        return ems * size;
    }

    private static Dictionary<int, double> ReadAdvances(ReadOnlySpan<byte> font)
    {
        var unitsPerEm = UInt16(Table(font, "head"), 18);
        var longMetrics = UInt16(Table(font, "hhea"), 34);
        var metrics = Table(font, "hmtx");
        var advances = new Dictionary<int, double>();
        foreach (var (character, glyph) in ReadCharacterMap(Table(font, "cmap")))
        {
            var row = Math.Min(glyph, longMetrics - 1);
            advances[character] = UInt16(metrics, row * 4) / (double)unitsPerEm;
        }

        return advances;
    }

    private static ReadOnlySpan<byte> Table(ReadOnlySpan<byte> font, string tag)
    {
        var name = Encoding.ASCII.GetBytes(tag);
        for (var record = 12; record < 12 + (UInt16(font, 4) * 16); record += 16)
        {
            if (font.Slice(record, 4).SequenceEqual(name))
            {
                return font[(int)UInt32(font, record + 8)..];
            }
        }

        throw new InvalidDataException($"The font has no table '{tag}'.");
    }

    private static List<(int Character, int Glyph)> ReadCharacterMap(ReadOnlySpan<byte> map)
    {
        for (var record = 4; record < 4 + (UInt16(map, 2) * 8); record += 8)
        {
            var subtable = map[(int)UInt32(map, record + 4)..];
            if (UInt16(map, record) == 3 && UInt16(subtable, 0) == 4)
            {
                return ReadSegments(subtable);
            }
        }

        throw new InvalidDataException("The font has no Unicode character map of format 4.");
    }

    private static List<(int Character, int Glyph)> ReadSegments(ReadOnlySpan<byte> table)
    {
        var glyphs = new List<(int, int)>();
        var width = UInt16(table, 6);
        for (var segment = 0; segment < width; segment += 2)
        {
            var last = UInt16(table, 14 + segment);
            var first = UInt16(table, 16 + width + segment);
            var delta = UInt16(table, 16 + (2 * width) + segment);
            var rangeAt = 16 + (3 * width) + segment;
            var range = UInt16(table, rangeAt);
            for (var character = (int)first; character <= last && character < 0xFFFF; character++)
            {
                var glyph =
                    range == 0
                        ? character
                        : UInt16(table, rangeAt + range + (2 * (character - first)));
                if (glyph != 0 || range == 0)
                {
                    glyphs.Add((character, (glyph + delta) & 0xFFFF));
                }
            }
        }

        return glyphs;
    }

    private static ushort UInt16(ReadOnlySpan<byte> data, int at) =>
        BinaryPrimitives.ReadUInt16BigEndian(data[at..]);

    private static uint UInt32(ReadOnlySpan<byte> data, int at) =>
        BinaryPrimitives.ReadUInt32BigEndian(data[at..]);
}
