using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.Drawings;

/// <summary>
/// A circular joint with its concentric passes, seen from the shoulder side. Every angle on a seam is measured
/// clockwise from the datum mark, which is drawn at the top.
/// </summary>
public sealed record PassPlan(string JointName, IReadOnlyList<PassTrack> Tracks)
{
    /// <summary>Radius of the joint line, drawn as a thin chain line where it is known.</summary>
    public Length? JointLineRadius { get; init; }
}

/// <summary>One pass of a circular joint.</summary>
public sealed record PassTrack
{
    /// <summary>Short name, for instance <c>1</c> or <c>Pass 1</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Radius of the circle on which the tool centre travels; more than zero.</summary>
    public required Length TrackRadius { get; init; }

    public required Length ShoulderDiameter { get; init; }

    public Length? PinDiameter { get; init; }

    /// <summary>Sense of the spindle, seen from the shoulder side.</summary>
    public required RotationSense Spindle { get; init; }

    /// <summary>Sense of travel on the circle, seen from the shoulder side.</summary>
    public required RotationSense Travel { get; init; }

    public required WeldSide InnerSide { get; init; }

    public required WeldSide OuterSide { get; init; }

    /// <summary>Where the tool plunges: clockwise from the datum mark at the top.</summary>
    public Angle Start { get; init; }

    /// <summary>How far the tool runs on after the full turn, in its sense of travel; not negative.</summary>
    public Angle Overlap { get; init; }
}
