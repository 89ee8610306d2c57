using System.Runtime.InteropServices;
using SkiaSharp;

namespace WeldTrace.Web.Pictures;

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

    /// <summary>Whether tiles of the finest level stand plain.</summary>
    public bool IsPlain => Place(0).Length < 0;

    /// <summary>A tile as JPEG; null when the pyramid has no such tile.</summary>
    public byte[]? Tile(int level, int x, int y)
    {
        if (!Layout.Has(level, x, y))
        {
            return null;
        }

        var (position, length) = Place(Layout.Index(level, x, y));
        var tile = new byte[Math.Abs(length)];
        _file.Position = position;
        _file.ReadExactly(tile);
        if (length >= 0)
        {
            return tile;
        }

        var (width, height) = Layout.SizeOf(level, x, y);
        using var packed = TilePacking.Pack(tile, width, height);
        return packed.ToArray();
    }

    /// <summary>Writes the pyramid anew with every tile packed.</summary>
    public void Pack(string path, CancellationToken cancellation)
    {
        using var writer = new PyramidWriter(path, Layout);
        for (var level = 0; level < Layout.Levels; level++)
        {
            for (var y = 0; y < Layout.Rows(level); y++)
            {
                for (var x = 0; x < Layout.Columns(level); x++)
                {
                    cancellation.ThrowIfCancellationRequested();
                    writer.Write(Layout.Index(level, x, y), Tile(level, x, y)!);
                }
            }
        }

        writer.Finish();
    }

    private (long Position, long Length) Place(int index)
    {
        Span<long> place = stackalloc long[2];
        _file.Position = Start + (2L * sizeof(long) * index);
        _file.ReadExactly(MemoryMarshal.AsBytes(place));
        return (place[0], place[1]);
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
