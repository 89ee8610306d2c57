using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.VesselDesigns;

/// <summary>One circular pass as the drawing lays it out.</summary>
/// <param name="Number">1, 2, ... in the order of welding.</param>
/// <param name="TrackRadius">Radius of the tool centre's track; above zero.</param>
/// <param name="Overlap">Angle welded twice at the closing, 0 to 180 degrees.</param>
/// <param name="Travel">Travel sense, looking from the shoulder side on the work.</param>
/// <param name="Start">Angle of the start from the joint's reference mark, clockwise as seen from the shoulder side.</param>
public sealed record PassPlan(
    int Number,
    Length TrackRadius,
    Angle Overlap,
    RotationSense Travel,
    Angle Start
)
{
    /// <summary>Path of the pass, overlap included.</summary>
    public Length Path => TrackRadius * ((2 * Math.PI) + Overlap.Radians);

    /// <summary>A place told from the joint's mark, as a place along the travel.</summary>
    /// <param name="clockwise">Angle from the mark, clockwise as seen from the shoulder side.</param>
    /// <returns>Angle along the travel from the start of the pass, 0° up to 360°.</returns>
    public Angle FromMark(Angle clockwise)
    {
        var fromStart = clockwise.Degrees - Start.Degrees;
        var along = Travel == RotationSense.Clockwise ? fromStart : -fromStart;
        return Angle.FromDegrees(((along % 360) + 360) % 360);
    }
}

/// <summary>A welded joint of the vessel with its passes.</summary>
/// <param name="Code">Short code on the drawing, for instance <c>J1</c>.</param>
/// <param name="Name">What it joins.</param>
/// <param name="JointType">Joint type in the trade's words.</param>
/// <param name="Thickness">Thickness of the joint; above zero.</param>
/// <param name="ProcedureNumber">Welding procedure that the drawing names.</param>
/// <param name="Passes">Passes in the order of welding; at least one.</param>
public sealed record Joint(
    string Code,
    string Name,
    string JointType,
    Length Thickness,
    string ProcedureNumber,
    IReadOnlyList<PassPlan> Passes
)
{
    private const int LongestText = 80;

    /// <summary>What depends on the weld; sets its least methods of examination. Null when the design doesn't class it.</summary>
    public Procedures.JointClass? Class { get; init; }

    /// <summary>The pass of a number; null when there is none.</summary>
    public PassPlan? Pass(int number) => Passes.FirstOrDefault(p => p.Number == number);

    internal void Check(Checks checks)
    {
        checks
            .Text(Code, 10, "Give each joint a code", nameof(Code))
            .Text(Name, LongestText, $"Say what joint {Code} joins", nameof(Name))
            .Text(JointType, LongestText, $"Give the joint type of {Code}", nameof(JointType))
            .Text(
                ProcedureNumber,
                LongestText,
                $"Name the welding procedure of joint {Code}",
                nameof(ProcedureNumber)
            )
            .That(
                Thickness > Length.Zero,
                "thickness",
                $"Give the thickness of joint {Code}, above zero.",
                nameof(Thickness)
            )
            .That(
                Passes.Count > 0,
                "passes",
                $"Joint {Code} needs at least one pass.",
                nameof(Passes)
            )
            .That(
                Passes.Select(p => p.Number).SequenceEqual(Enumerable.Range(1, Passes.Count)),
                "passes",
                $"Number the passes of joint {Code} 1, 2, ... in the order of welding.",
                nameof(Passes)
            );
        foreach (var pass in Passes)
        {
            checks
                .That(
                    pass.TrackRadius > Length.Zero,
                    "radius",
                    $"Joint {Code} pass {pass.Number}: give a track radius above zero.",
                    nameof(Passes)
                )
                .That(
                    pass.Overlap.Degrees is >= 0 and <= 180,
                    "overlap",
                    $"Joint {Code} pass {pass.Number}: give an overlap of 0° to 180°.",
                    nameof(Passes)
                );
        }
    }
}
