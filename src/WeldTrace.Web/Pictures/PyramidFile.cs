using System.Runtime.InteropServices;
using SkiaSharp;

namespace WeldTrace.Web.Pictures;

/// <summary>Writes the tiles of a pyramid into one file: width, height, where each tile stands, then the tiles.</summary>
internal sealed class PyramidWriter : IDisposable
{
    private readonly FileStream _file;
    private readonly long[] _places;
    private readonly Lock _lock = new();

    public PyramidWriter(string path, PyramidLayout layout)
    {
        Layout = layout;
        _file = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None, 1 << 20);
        _places = new long[2 * layout.TileCount];
        _file.Position = PyramidFile.HeadBytes(layout);
    }

    public PyramidLayout Layout { get; }

    public void Write(int index, SKData tile)
    {
        using (tile)
        {
            lock (_lock)
            {
                (_places[2 * index], _places[(2 * index) + 1]) = (_file.Position, tile.Size);
                _file.Write(tile.AsSpan());
            }
        }
    }

    /// <summary>Writes the head; before that the file is no pyramid.</summary>
    public void Finish()
    {
        _file.Position = 0;
        _file.Write(
            MemoryMarshal.AsBytes(
                (ReadOnlySpan<int>)[PyramidFile.Magic, Layout.Width, Layout.Height]
            )
        );
        _file.Write(MemoryMarshal.AsBytes((ReadOnlySpan<long>)_places));
    }

    public void Dispose() => _file.Dispose();
}

/// <summary>Reads a pyramid. It follows from the original and can always be made again.</summary>
internal sealed class PyramidFile : IDisposable
{
    public const int Magic = 0x31505457;
    private const int Start = 3 * sizeof(int);
    private readonly FileStream _file;

    private PyramidFile(FileStream file, PyramidLayout layout) => (_file, Layout) = (file, layout);

    public PyramidLayout Layout { get; }

    public static long HeadBytes(PyramidLayout layout) =>
        Start + (2L * sizeof(long) * layout.TileCount);

    /// <summary>Opens a pyramid; null when there is none or it was not finished.</summary>
    public static PyramidFile? TryOpen(string path)
    {
        if (!File.Exists(path))
        {
            return null;
        }

        var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 4096);
        Span<int> head = stackalloc int[3];
        if (
            file.ReadAtLeast(MemoryMarshal.AsBytes(head), Start, throwOnEndOfStream: false) == Start
            && head[0] == Magic
        )
        {
            return new PyramidFile(file, new PyramidLayout(head[1], head[2]));
        }

        file.Dispose();
        return null;
    }

    /// <summary>A tile as JPEG; null when the pyramid has no such tile.</summary>
    public byte[]? Tile(int level, int x, int y)
    {
        if (!Layout.Has(level, x, y))
        {
            return null;
        }

        Span<long> place = stackalloc long[2];
        _file.Position = Start + (2L * sizeof(long) * Layout.Index(level, x, y));
        _file.ReadExactly(MemoryMarshal.AsBytes(place));
        var tile = new byte[place[1]];
        _file.Position = place[0];
        _file.ReadExactly(tile);
        return tile;
    }

    /// <summary>The whole picture as JPEG, from the largest level of at most so many pixels on its longer side.</summary>
    public byte[] Whole(int longestSide)
    {
        var level = 0;
        while (Math.Max(Layout.WidthAt(level), Layout.HeightAt(level)) > longestSide)
        {
            level++;
        }

        using var bitmap = new SKBitmap(
            Layout.WidthAt(level),
            Layout.HeightAt(level),
            SKColorType.Rgba8888,
            SKAlphaType.Opaque
        );
        using (var canvas = new SKCanvas(bitmap))
        {
            for (var y = 0; y < Layout.Rows(level); y++)
            {
                for (var x = 0; x < Layout.Columns(level); x++)
                {
                    using var tile = SKImage.FromEncodedData(Tile(level, x, y)!);
                    canvas.DrawImage(
                        tile,
                        x * PyramidLayout.Tile,
                        y * PyramidLayout.Tile,
                        SKSamplingOptions.Default
                    );
                }
            }
        }

        using var encoded = bitmap.Encode(SKEncodedImageFormat.Jpeg, 90);
        return encoded.ToArray();
    }

    public void Dispose() => _file.Dispose();
}
