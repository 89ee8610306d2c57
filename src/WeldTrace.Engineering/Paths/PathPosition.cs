using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Paths;

/// <summary>A place on the path of a circular pass.</summary>
/// <param name="Distance">Distance from the start along the path.</param>
/// <param name="Angle">Angle from the start in the direction of travel; beyond 360° in the overlap.</param>
/// <param name="Remaining">Distance to the end of the path.</param>
/// <param name="OverlapsAt">In the overlap zone: the distance from the start at which this place was welded before; else null.</param>
public readonly record struct PathPosition(
    Length Distance,
    Angle Angle,
    Length Remaining,
    Length? OverlapsAt
)
{
    /// <summary>Whether this place lies in the overlap zone, welded for the second time.</summary>
    public bool IsInOverlap => OverlapsAt is not null;
}
