namespace WeldTrace.Engineering.Sections;

/// <summary>A point of a picture in pixels from its upper left corner; y grows downwards.</summary>
/// <param name="X">Pixels from the left edge.</param>
/// <param name="Y">Pixels from the upper edge.</param>
public readonly record struct PicturePoint(double X, double Y)
{
    /// <summary>Distance to another point, in pixels.</summary>
    public double To(PicturePoint other) => double.Hypot(other.X - X, other.Y - Y);
}
