using System.Buffers;
using System.Collections.Concurrent;
using System.Runtime.InteropServices;

namespace WeldTrace.Web.Pictures;

/// <summary>
/// Makes all levels of a picture in one pass over its rows: while one band of tiles is packed, the next is decoded. Parents wait
/// only for their four children, so a turned picture needs no whole copy either. Packing is four fifths of the work: of a large
/// picture the two finest levels are written plain, to be packed when nobody waits.
/// </summary>
internal sealed class PyramidBuilder
{
    private const int Tile = PyramidLayout.Tile;

    /// <summary>Pixels up to which all tiles are packed at once.</summary>
    private const long MostPackedAtOnce = 20_000_000;

    private readonly IRaster _raster;
    private readonly Turn _turn;
    private readonly PyramidLayout _layout;
    private readonly PyramidWriter _writer;
    private readonly int _plainLevels;
    private readonly ConcurrentDictionary<(int Level, int X, int Y), Parent> _waiting = [];

    private PyramidBuilder(IRaster raster, Turn turn, PyramidWriter writer)
    {
        (_raster, _turn, _layout, _writer) = (raster, turn, writer.Layout, writer);
        _plainLevels = (long)raster.Width * raster.Height > MostPackedAtOnce ? 2 : 0;
    }

    /// <summary>Writes the pyramid of a picture to a file.</summary>
    /// <exception cref="DamagedPictureException">The pixels can't be read to the end.</exception>
    public static void Build(IRaster raster, int orientation, string path)
    {
        var turn = new Turn(orientation, raster.Width, raster.Height);
        using var writer = new PyramidWriter(
            path,
            new PyramidLayout(turn.ShownWidth, turn.ShownHeight)
        );
        new PyramidBuilder(raster, turn, writer).Run();
        writer.Finish();
    }

    private void Run()
    {
        var largest = _turn.FileWidth * 4 * Math.Min(Tile, _turn.FileHeight);
        byte[][] bands =
        [
            ArrayPool<byte>.Shared.Rent(largest),
            ArrayPool<byte>.Shared.Rent(largest),
        ];
        var packing = Task.CompletedTask;
        try
        {
            for (var (row, number) = (0, 0); row < _turn.FileHeight; number++)
            {
                var rows = RowsOfBand(row);
                var (band, first) = (bands[number % 2], row);
                _raster.ReadRows(band, rows);
                packing.GetAwaiter().GetResult();
                packing = Task.Run(() => Pack(band, first));
                row += rows;
            }

            packing.GetAwaiter().GetResult();
        }
        finally
        {
            // A band is given back only when nobody reads it any more.
            packing.ContinueWith(_ => { }, TaskScheduler.Default).GetAwaiter().GetResult();
            Array.ForEach(bands, band => ArrayPool<byte>.Shared.Return(band));
        }
    }

    // Bands end where tiles of the shown picture end, counted from its other edge when the rows run backwards.
    private int RowsOfBand(int first)
    {
        var left = _turn.FileHeight - first;
        return _turn.RunsBackwards && left % Tile != 0 ? left % Tile : Math.Min(Tile, left);
    }

    private void Pack(byte[] band, int first)
    {
        var shown = _turn.RunsBackwards ? _turn.FileHeight - 1 - first : first;
        var index = shown / Tile;
        var count = _turn.IsTransposed ? _layout.Rows(0) : _layout.Columns(0);
        Parallel.For(
            0,
            count,
            i =>
            {
                var (x, y) = _turn.IsTransposed ? (index, i) : (i, index);
                var (width, height) = _layout.SizeOf(0, x, y);
                var pixels = ArrayPool<uint>.Shared.Rent(width * height);
                Copy(band, first, x * Tile, y * Tile, width, height, pixels);
                Keep(0, x, y, width, height, pixels);
            }
        );
    }

    private void Copy(byte[] band, int first, int left, int top, int width, int height, uint[] to)
    {
        var from = MemoryMarshal.Cast<byte, uint>(band.AsSpan());
        if (_turn.Orientation <= 1)
        {
            for (var y = 0; y < height; y++)
            {
                from.Slice(((top + y - first) * _turn.FileWidth) + left, width)
                    .CopyTo(to.AsSpan(y * width));
            }

            return;
        }

        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                var (fileX, fileY) = _turn.InFile(left + x, top + y);
                to[(y * width) + x] = from[((fileY - first) * _turn.FileWidth) + fileX];
            }
        }
    }

    /// <summary>Packs a tile and adds its half to its parent; whoever adds the last quarter goes on with the parent.</summary>
    private void Keep(int level, int x, int y, int width, int height, uint[] pixels)
    {
        Write(_layout.Index(level, x, y), level, pixels, width, height);
        if (level + 1 < _layout.Levels)
        {
            var parent = _waiting.GetOrAdd((level + 1, x / 2, y / 2), Begin);
            parent.Add(pixels, width, height, x % 2 * (Tile / 2), y % 2 * (Tile / 2));
            if (parent.IsWhole())
            {
                _waiting.TryRemove((level + 1, x / 2, y / 2), out _);
                Keep(level + 1, x / 2, y / 2, parent.Width, parent.Height, parent.Pixels);
            }
        }

        ArrayPool<uint>.Shared.Return(pixels);
    }

    private void Write(int index, int level, uint[] pixels, int width, int height)
    {
        if (level < _plainLevels)
        {
            _writer.WritePlain(index, pixels.AsSpan(0, width * height));
            return;
        }

        using var packed = TilePacking.Pack(pixels, width, height);
        _writer.Write(index, packed.AsSpan());
    }

    private Parent Begin((int Level, int X, int Y) key)
    {
        var (width, height) = _layout.SizeOf(key.Level, key.X, key.Y);
        var columns = Math.Min(2, _layout.Columns(key.Level - 1) - (2 * key.X));
        var rows = Math.Min(2, _layout.Rows(key.Level - 1) - (2 * key.Y));
        return new Parent(width, height, columns * rows);
    }

    private sealed class Parent(int width, int height, int children)
    {
        private int _missing = children;

        public int Width => width;

        public int Height => height;

        public uint[] Pixels { get; } = ArrayPool<uint>.Shared.Rent(width * height);

        public bool IsWhole() => Interlocked.Decrement(ref _missing) == 0;

        /// <summary>The mean of each two by two pixels; at an odd edge of those that are there.</summary>
        public void Add(uint[] child, int childWidth, int childHeight, int left, int top)
        {
            for (var y = 0; y < (childHeight + 1) / 2; y++)
            {
                var upper = child.AsSpan(2 * y * childWidth, childWidth);
                var lower =
                    (2 * y) + 1 < childHeight
                        ? child.AsSpan(((2 * y) + 1) * childWidth, childWidth)
                        : upper;
                var to = Pixels.AsSpan(((top + y) * width) + left, (childWidth + 1) / 2);
                for (var x = 0; x < childWidth / 2; x++)
                {
                    to[x] = Mean(
                        upper[2 * x],
                        upper[(2 * x) + 1],
                        lower[2 * x],
                        lower[(2 * x) + 1]
                    );
                }

                if (childWidth % 2 == 1)
                {
                    to[^1] = Mean(upper[^1], upper[^1], lower[^1], lower[^1]);
                }
            }
        }

        // Two channels at a time, each with room for the sum of four.
        private static uint Mean(uint a, uint b, uint c, uint d)
        {
            const uint Even = 0x00FF00FF;
            var low = (a & Even) + (b & Even) + (c & Even) + (d & Even) + 0x00020002;
            var high =
                ((a >> 8) & Even)
                + ((b >> 8) & Even)
                + ((c >> 8) & Even)
                + ((d >> 8) & Even)
                + 0x00020002;
            return ((low >> 2) & Even) | (((high >> 2) & Even) << 8);
        }
    }
}
