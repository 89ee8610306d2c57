using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.VesselDesigns;

/// <summary>A pass of the drawing, welded with the set points of a procedure and a tool design.</summary>
public static class PassLayout
{
    private static readonly Length Retract = Length.FromMillimetres(10);
    private static readonly Speed RetractRate = Speed.FromMillimetresPerMinute(300);
    private static readonly Speed UsualPlungeRate = Speed.FromMillimetresPerMinute(15);

    /// <summary>Lays out the pass. Where the procedure gives no plunge rate, 15 mm/min is taken (common practice, no source).</summary>
    /// <param name="pass">Pass of the drawing.</param>
    /// <param name="procedure">Procedure with set points for spindle and travel speed.</param>
    /// <param name="tool">Tool design of the procedure.</param>
    public static Computed<CircularPassLayout> Compute(
        PassPlan pass,
        ProcedureContent procedure,
        ToolGeometry tool
    )
    {
        ArgumentNullException.ThrowIfNull(pass);
        ArgumentNullException.ThrowIfNull(procedure);
        ArgumentNullException.ThrowIfNull(tool);
        var dwell = TimeSpan.FromSeconds(SetPoint(procedure, WeldParameter.DwellTime) ?? 0);
        return CircularPassLayout.Compute(
            new CircularPass
            {
                Number = pass.Number,
                TrackRadius = pass.TrackRadius,
                OverlapAngle = pass.Overlap,
                SpindleSense = procedure.SpindleSense,
                TravelSense = pass.Travel,
                TravelSpeed = Speed.FromSi(SetPoint(procedure, WeldParameter.TravelSpeed) ?? 0),
                SpindleSpeed = RotationSpeed.FromSi(
                    SetPoint(procedure, WeldParameter.SpindleSpeed) ?? 0
                ),
                PlungeDepth = SetPoint(procedure, WeldParameter.PlungeDepth) is { } depth
                    ? Length.FromSi(depth)
                    : tool.PinLength,
                PlungeRate = SetPoint(procedure, WeldParameter.PlungeRate) is { } rate
                    ? Speed.FromSi(rate)
                    : UsualPlungeRate,
                DwellAtStart = dwell,
                RetractDistance = Retract,
                RetractRate = RetractRate,
                ShoulderDiameter = tool.ShoulderDiameter,
                PinDiameter = tool.PinDiameter,
            }
        );
    }

    private static double? SetPoint(ProcedureContent procedure, WeldParameter parameter) =>
        procedure.WindowOf(parameter)?.SetPointSi;
}
