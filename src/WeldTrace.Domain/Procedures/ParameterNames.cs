namespace WeldTrace.Domain.Procedures;

/// <summary>The trade's words for the parameters.</summary>
public static class ParameterNames
{
    /// <summary>The name of a parameter as printed at the start of a line.</summary>
    public static string Of(WeldParameter parameter) =>
        parameter switch
        {
            WeldParameter.SpindleSpeed => "Spindle speed",
            WeldParameter.TravelSpeed => "Travel speed",
            WeldParameter.AxialForce => "Axial force",
            WeldParameter.Torque => "Torque",
            WeldParameter.PlungeDepth => "Plunge depth",
            WeldParameter.PlungeRate => "Plunge rate",
            WeldParameter.DwellTime => "Dwell time",
            WeldParameter.TiltAngle => "Tilt angle",
            WeldParameter.ToolTemperature => "Tool temperature",
            WeldParameter.HeelPlungeDepth => "Heel plunge depth",
            WeldParameter.PenetrationLigament => "Penetration ligament",
            WeldParameter.EndDwellTime => "Dwell time at the end",
            WeldParameter.RampTime => "Ramp time",
            WeldParameter.SideTiltAngle => "Side tilt angle",
            WeldParameter.LateralOffset => "Lateral offset",
            _ => throw new ArgumentOutOfRangeException(
                nameof(parameter),
                parameter,
                "Unknown parameter."
            ),
        };
}
