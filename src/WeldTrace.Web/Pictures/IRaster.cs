namespace WeldTrace.Web.Pictures;

/// <summary>The pixels of a picture, row after row, so that a large one is never in memory as a whole.</summary>
internal interface IRaster : IDisposable
{
    int Width { get; }

    int Height { get; }

    /// <summary>Reads the next rows as red, green, blue, opaque, a byte each.</summary>
    /// <exception cref="DamagedPictureException">The pixels break off or can't be decoded.</exception>
    void ReadRows(byte[] rgba, int rows);
}
