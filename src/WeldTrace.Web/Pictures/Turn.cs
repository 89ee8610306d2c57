namespace WeldTrace.Web.Pictures;

/// <summary>How the rows of a file become the picture as shown (EXIF orientation 1 to 8).</summary>
internal readonly record struct Turn(int Orientation, int FileWidth, int FileHeight)
{
    /// <summary>Whether rows of the file become columns.</summary>
    public bool IsTransposed => Orientation >= 5;

    /// <summary>Whether the first rows of the file come last.</summary>
    public bool RunsBackwards => Orientation is 3 or 4 or 6 or 7;

    /// <summary>Whether the first column of the file comes last.</summary>
    public bool IsMirrored => Orientation is 2 or 3 or 7 or 8;

    public int ShownWidth => IsTransposed ? FileHeight : FileWidth;

    public int ShownHeight => IsTransposed ? FileWidth : FileHeight;

    /// <summary>The pixel of the file that is shown at a place.</summary>
    public (int X, int Y) InFile(int x, int y)
    {
        var (along, across) = IsTransposed ? (y, x) : (x, y);
        return (
            IsMirrored ? FileWidth - 1 - along : along,
            RunsBackwards ? FileHeight - 1 - across : across
        );
    }
}
