namespace WeldTrace.Web.Pictures;

/// <summary>Levels of a picture, each half as large as the one before, cut into tiles.</summary>
/// <param name="Width">Width of level 0, the picture as shown.</param>
/// <param name="Height">Its height.</param>
internal readonly record struct PyramidLayout(int Width, int Height)
{
    /// <summary>Side of a tile in pixels; even, so that four tiles halve into one.</summary>
    public const int Tile = 512;

    /// <summary>Levels until one tile holds all.</summary>
    public int Levels
    {
        get
        {
            var (count, side) = (1, Math.Max(Width, Height));
            for (; side > Tile; side = (side + 1) / 2)
            {
                count++;
            }

            return count;
        }
    }

    public int TileCount
    {
        get
        {
            var count = 0;
            for (var level = 0; level < Levels; level++)
            {
                count += Columns(level) * Rows(level);
            }

            return count;
        }
    }

    public int WidthAt(int level) => Halved(Width, level);

    public int HeightAt(int level) => Halved(Height, level);

    public int Columns(int level) => (WidthAt(level) + Tile - 1) / Tile;

    public int Rows(int level) => (HeightAt(level) + Tile - 1) / Tile;

    public bool Has(int level, int x, int y) =>
        level >= 0 && level < Levels && x >= 0 && x < Columns(level) && y >= 0 && y < Rows(level);

    /// <summary>Width and height of a tile; those at the right and lower edge may be smaller.</summary>
    public (int Width, int Height) SizeOf(int level, int x, int y) =>
        (Math.Min(Tile, WidthAt(level) - (x * Tile)), Math.Min(Tile, HeightAt(level) - (y * Tile)));

    /// <summary>Place of a tile in the order of all, level by level and row by row.</summary>
    public int Index(int level, int x, int y)
    {
        var before = 0;
        for (var l = 0; l < level; l++)
        {
            before += Columns(l) * Rows(l);
        }

        return before + (y * Columns(level)) + x;
    }

    private static int Halved(int length, int level)
    {
        for (var i = 0; i < level; i++)
        {
            length = (length + 1) / 2;
        }

        return length;
    }
}
