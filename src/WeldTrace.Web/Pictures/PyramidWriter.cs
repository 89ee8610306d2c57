using System.Runtime.InteropServices;

namespace WeldTrace.Web.Pictures;

/// <summary>
/// Writes the tiles of a pyramid into one file: width, height, where each tile stands, then the tiles. A tile is packed as JPEG, or
/// stands plain, four bytes a pixel, where time is short; its length is then written below zero.
/// </summary>
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

    /// <summary>Writes a tile that is packed.</summary>
    public void Write(int index, ReadOnlySpan<byte> jpeg) => Write(index, jpeg, jpeg.Length);

    /// <summary>Writes a tile as it is, to be packed later.</summary>
    public void WritePlain(int index, ReadOnlySpan<uint> pixels)
    {
        var bytes = MemoryMarshal.AsBytes(pixels);
        Write(index, bytes, -bytes.Length);
    }

    private void Write(int index, ReadOnlySpan<byte> tile, long length)
    {
        lock (_lock)
        {
            (_places[2 * index], _places[(2 * index) + 1]) = (_file.Position, length);
            _file.Write(tile);
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
