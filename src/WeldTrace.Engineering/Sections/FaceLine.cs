namespace WeldTrace.Engineering.Sections;

/// <summary>
/// The weld face on a picture of a section, drawn from its edge on the advancing side to its edge on the retreating side. It tells
/// which side a place lies on, how far from the middle of the face, and how deep.
/// </summary>
/// <param name="Advancing">Edge of the face on the advancing side.</param>
/// <param name="Retreating">Edge of the face on the retreating side.</param>
public sealed record FaceLine(PicturePoint Advancing, PicturePoint Retreating)
{
    /// <summary>Width of the face in pixels.</summary>
    public double Width() => Advancing.To(Retreating);

    /// <summary>Distance along the face from its middle, in pixels: below zero on the advancing side, above on the retreating side.</summary>
    public double FromMiddle(PicturePoint point)
    {
        var (middleX, middleY) = (
            (Advancing.X + Retreating.X) / 2,
            (Advancing.Y + Retreating.Y) / 2
        );
        return (
                ((point.X - middleX) * (Retreating.X - Advancing.X))
                + ((point.Y - middleY) * (Retreating.Y - Advancing.Y))
            ) / Width();
    }

    /// <summary>Distance from the line of the face, in pixels, zero or more.</summary>
    public double FromFace(PicturePoint point) =>
        double.Abs(
            ((point.Y - Advancing.Y) * (Retreating.X - Advancing.X))
                - ((point.X - Advancing.X) * (Retreating.Y - Advancing.Y))
        ) / Width();
}
