namespace WeldTrace.Engineering.Paths;

/// <summary>Side of a weld line, looking along the direction of travel.</summary>
public enum LineSide
{
    /// <summary>Left of the line.</summary>
    Left,

    /// <summary>Right of the line.</summary>
    Right,
}

/// <summary>Edge of a circular weld track.</summary>
public enum CircleEdge
{
    /// <summary>The edge towards the centre.</summary>
    Inner,

    /// <summary>The edge away from the centre.</summary>
    Outer,
}

/// <summary>
/// Which side of a weld is the advancing one. Computed from the definition: on the advancing side the surface velocity of
/// the tool, ω × r, points along the travel, (ω × r)·v above zero (terms of ISO 25239-1:2020, read in a summary). All
/// senses are those seen from the shoulder side on the work, z towards the viewer.
/// </summary>
public static class AdvancingSide
{
    /// <summary>The advancing side of a weld along a line.</summary>
    /// <param name="spindle">Sense of the spindle, seen from the shoulder side.</param>
    public static LineSide OnLine(RotationSense spindle)
    {
        var travel = new PlaneVector(1, 0);
        var rightRim = new PlaneVector(0, -1);
        return IsAdvancing(spindle, rightRim, travel) ? LineSide.Right : LineSide.Left;
    }

    /// <summary>The advancing edge of a weld on a circle.</summary>
    /// <param name="spindle">Sense of the spindle, seen from the shoulder side.</param>
    /// <param name="travel">Sense of the travel on the circle, seen from the same side.</param>
    public static CircleEdge OnCircle(RotationSense spindle, RotationSense travel)
    {
        var outward = new PlaneVector(1, 0);
        var along = PlaneVector.CrossZ(SpinOf(travel), outward);
        return IsAdvancing(spindle, outward, along) ? CircleEdge.Outer : CircleEdge.Inner;
    }

    /// <summary>The travel of the tool relative to a work piece that turns below a fixed spindle: opposite to the work.</summary>
    public static RotationSense TravelOverTurningWork(RotationSense workRotation) =>
        Opposite(workRotation);

    /// <summary>The other sense.</summary>
    public static RotationSense Opposite(RotationSense sense) =>
        SpinOf(sense) > 0 ? RotationSense.Clockwise : RotationSense.CounterClockwise;

    /// <summary>The other edge.</summary>
    public static CircleEdge Opposite(CircleEdge edge) =>
        edge == CircleEdge.Inner ? CircleEdge.Outer : CircleEdge.Inner;

    private static bool IsAdvancing(RotationSense spindle, PlaneVector rim, PlaneVector travel) =>
        PlaneVector.CrossZ(SpinOf(spindle), rim).Dot(travel) > 0;

    private static double SpinOf(RotationSense sense) =>
        sense switch
        {
            RotationSense.Clockwise => -1,
            RotationSense.CounterClockwise => 1,
            _ => throw new ArgumentOutOfRangeException(nameof(sense), sense, "Unknown sense."),
        };
}
