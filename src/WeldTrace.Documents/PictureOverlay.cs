namespace WeldTrace.Documents;

/// <summary>What was measured on a picture, kept apart from it and printed over it.</summary>
/// <param name="Width">Width of the picture in the pixels in which the points are given.</param>
/// <param name="Height">Its height.</param>
/// <param name="MicrometresPerPixel">Length of such a pixel in µm; null without a scale, and then no bar is drawn.</param>
/// <param name="Shapes">What is drawn.</param>
public sealed record PictureOverlay(
    double Width,
    double Height,
    double? MicrometresPerPixel,
    IReadOnlyList<OverlayShape> Shapes
);

/// <summary>A point, line or outline on a picture.</summary>
/// <param name="Name">Written at its first point.</param>
/// <param name="Points">Points in pixels; one or more.</param>
public sealed record OverlayShape(string Name, IReadOnlyList<(double X, double Y)> Points)
{
    /// <summary>Whether the last point joins the first.</summary>
    public bool IsClosed { get; init; }

    /// <summary>Whether it is drawn dashed, as the scale and the weld face are.</summary>
    public bool IsDashed { get; init; }

    /// <summary>Written at its last point; null for nothing.</summary>
    public string? EndName { get; init; }
}
