using BitMiracle.LibTiff.Classic;

namespace WeldTrace.Web.Pictures;

/// <summary>Rows of a tiled TIFF, from one row of tiles at a time.</summary>
internal sealed class TiffTileRows
{
    private readonly Tiff _tiff;
    private readonly int _rowBytes;
    private readonly int _tileHeight;
    private readonly int _tileRowBytes;
    private readonly byte[] _tile;
    private readonly byte[] _rows;
    private int _first = -1;

    public TiffTileRows(Tiff tiff, int rowBytes, int height)
    {
        (_tiff, _rowBytes) = (tiff, rowBytes);
        _tileHeight = Math.Min(tiff.GetField(TiffTag.TILELENGTH)[0].ToInt(), height);
        _tileRowBytes = tiff.TileRowSize();
        _tile = new byte[tiff.TileSize()];
        _rows = new byte[rowBytes * _tileHeight];
    }

    /// <summary>Reads a row; false when its tiles can't be decoded.</summary>
    public bool Read(int row, byte[] into)
    {
        var first = row / _tileHeight * _tileHeight;
        if (first != _first && !ReadTiles(first))
        {
            return false;
        }

        _rows.AsSpan((row - first) * _rowBytes, _rowBytes).CopyTo(into);
        return true;
    }

    private bool ReadTiles(int first)
    {
        var width = _tiff.GetField(TiffTag.IMAGEWIDTH)[0].ToInt();
        var tileWidth = _tiff.GetField(TiffTag.TILEWIDTH)[0].ToInt();
        for (var x = 0; x < width; x += tileWidth)
        {
            if (_tiff.ReadTile(_tile, 0, x, first, 0, 0) < 0)
            {
                return false;
            }

            var left = x / tileWidth * _tileRowBytes;
            var taken = Math.Min(_tileRowBytes, _rowBytes - left);
            for (var y = 0; y < _tileHeight; y++)
            {
                _tile.AsSpan(y * _tileRowBytes, taken).CopyTo(_rows.AsSpan((y * _rowBytes) + left));
            }
        }

        _first = first;
        return true;
    }
}
