using WeldTrace.Domain.Procedures;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Materials;
using WeldTrace.Engineering.Process;
using WeldTrace.Engineering.Quantities;
using ToolGeometry = WeldTrace.Domain.Tooling.ToolGeometry;

namespace WeldTrace.Web.Features.Procedures.Show;

/// <summary>What follows from the windows of a procedure: pitch and the band of the peak temperature.</summary>
public sealed record WindowFigures(
    Computed<WeldKinematics> AtSetPoint,
    WeldPitch? Least,
    WeldPitch? Greatest,
    Computed<HeatIndex>? Heat
)
{
    /// <summary>The figures; null while spindle or travel speed has no window.</summary>
    public static WindowFigures? Of(ProcedureContent content, ToolGeometry? tool)
    {
        ArgumentNullException.ThrowIfNull(content);
        if (
            content.WindowOf(WeldParameter.SpindleSpeed) is not { } spindle
            || content.WindowOf(WeldParameter.TravelSpeed) is not { } travel
        )
        {
            return null;
        }

        var shoulder = tool?.ShoulderDiameter ?? Length.FromMillimetres(15);
        var alloy = AlloyLibrary.Find(content.Alloy);
        var (rotation, speed) = (
            RotationSpeed.FromSi(spindle.SetPointSi),
            Speed.FromSi(travel.SetPointSi)
        );
        return new WindowFigures(
            WeldKinematics.Compute(rotation, speed, shoulder, tool?.PinDiameter),
            Pitch(travel.LowerSi, spindle.UpperSi),
            Pitch(travel.UpperSi, spindle.LowerSi),
            alloy?.Liquidus is { } liquidus
                ? HeatIndex.Compute(rotation, speed, liquidus.Value, alloy.Solidus?.Value)
                : null
        );
    }

    private static WeldPitch? Pitch(double metresPerSecond, double revolutionsPerSecond) =>
        revolutionsPerSecond > 0
            ? WeldPitch.FromMetresPerRevolution(metresPerSecond / revolutionsPerSecond)
            : null;
}
