using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Signals;

/// <summary>A circular pass, to place a distance along the seam on the circle.</summary>
public sealed record CircularTrack
{
    /// <summary>Makes a track.</summary>
    /// <param name="radius">Radius of the pass; more than zero.</param>
    /// <param name="start">Angle of the start, counter-clockwise from the reference mark.</param>
    /// <param name="travel">Direction of travel, seen from the shoulder side.</param>
    /// <exception cref="ArgumentOutOfRangeException">The radius is not more than zero.</exception>
    public CircularTrack(Length radius, Angle start, RotationSense travel)
    {
        if (radius <= Length.Zero)
        {
            throw new ArgumentOutOfRangeException(nameof(radius), radius, "Not more than zero.");
        }

        (Radius, Start, Travel) = (radius, start, travel);
    }

    /// <summary>Radius of the pass; more than zero.</summary>
    public Length Radius { get; }

    /// <summary>Angle of the start, counter-clockwise from the reference mark, seen from the shoulder side.</summary>
    public Angle Start { get; }

    /// <summary>Direction of travel, seen from the shoulder side.</summary>
    public RotationSense Travel { get; }

    /// <summary>Length of one turn.</summary>
    public Length Circumference => Radius * (2 * Math.PI);

    /// <summary>Angle on the circle, from 0 up to but not including one turn, counter-clockwise from the reference mark.</summary>
    /// <param name="position">Distance travelled from the start; may be more than one turn.</param>
    public Angle AngleAt(Length position)
    {
        var turned = position / Radius * (Travel == RotationSense.CounterClockwise ? 1 : -1);
        var angle = (Start.Radians + turned) % (2 * Math.PI);
        var positive = angle < 0 ? angle + (2 * Math.PI) : angle;
        return Angle.FromRadians(positive >= 2 * Math.PI ? 0 : positive);
    }
}
