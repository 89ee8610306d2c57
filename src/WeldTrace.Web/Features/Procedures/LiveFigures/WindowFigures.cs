using WeldTrace.Domain.Procedures;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Materials;
using WeldTrace.Engineering.Process;
using WeldTrace.Engineering.Quantities;
using MeasuredPin = WeldTrace.Domain.Tooling.MeasuredPin;
using ToolGeometry = WeldTrace.Domain.Tooling.ToolGeometry;

namespace WeldTrace.Web.Features.Procedures.LiveFigures;

/// <summary>What follows from the windows of a procedure: pitch, line energy, the band of the peak temperature, the ligament.</summary>
public sealed record WindowFigures(
    Computed<WeldKinematics> AtSetPoint,
    Computed<WeldKinematics> Least,
    Computed<WeldKinematics> Greatest,
    Computed<HeatIndex>? Heat
)
{
    /// <summary>Power and line energy at the set point of the torque; null without a window for it.</summary>
    public Computed<PowerInput>? Energy { get; init; }

    /// <summary>Ligament below the tip, with the pin as last measured or else as drawn; null without a tool design or thickness.</summary>
    public Computed<PenetrationLigament>? Ligament { get; init; }

    /// <summary>The pin that the ligament counts with; null when it is that of the drawing or the depth of the tip is laid down.</summary>
    public MeasuredPin? Pin { get; init; }

    /// <summary>The figures; null while spindle or travel speed has no window.</summary>
    public static WindowFigures? Of(
        ProcedureContent content,
        ToolGeometry? tool,
        MeasuredPin? pin = null
    )
    {
        ArgumentNullException.ThrowIfNull(content);
        if (
            content.WindowOf(WeldParameter.SpindleSpeed) is not { } spindle
            || content.WindowOf(WeldParameter.TravelSpeed) is not { } travel
        )
        {
            return null;
        }

        var alloy = AlloyLibrary.Find(content.Alloy);
        var (rotation, speed) = (
            RotationSpeed.FromSi(spindle.SetPointSi),
            Speed.FromSi(travel.SetPointSi)
        );
        return new WindowFigures(
            Kinematics(rotation, speed),
            Kinematics(RotationSpeed.FromSi(spindle.UpperSi), Speed.FromSi(travel.LowerSi)),
            Kinematics(RotationSpeed.FromSi(spindle.LowerSi), Speed.FromSi(travel.UpperSi)),
            alloy?.Liquidus is { } liquidus
                ? HeatIndex.Compute(rotation, speed, liquidus.Value, alloy.Solidus?.Value)
                : null
        )
        {
            Energy = content.WindowOf(WeldParameter.Torque) is { } torque
                ? PowerInput.Compute(rotation, Torque.FromSi(torque.SetPointSi), speed)
                : null,
            Pin = content.WindowOf(WeldParameter.PlungeDepth) is null ? pin : null,
            Ligament =
                tool is not null && content.StackThickness > Length.Zero
                    ? PenetrationLigament.Compute(
                        content.StackThickness,
                        pin?.Length ?? tool.PinLength,
                        Depth(content, WeldParameter.PlungeDepth),
                        Depth(content, WeldParameter.HeelPlungeDepth)
                    )
                    : null,
        };

        Computed<WeldKinematics> Kinematics(RotationSpeed turning, Speed travelling) =>
            WeldKinematics.Compute(turning, travelling, tool?.ShoulderDiameter, tool?.PinDiameter);
    }

    private static Length? Depth(ProcedureContent content, WeldParameter parameter) =>
        content.WindowOf(parameter) is { } window ? Length.FromSi(window.SetPointSi) : null;
}
