namespace WeldTrace.Domain.Procedures;

/// <summary>A variable of the welding procedure that has a window (ISO 25239-1:2020 terms).</summary>
public enum WeldParameter
{
    /// <summary>Rotation speed of the tool.</summary>
    SpindleSpeed,

    /// <summary>Speed of the tool along the joint.</summary>
    TravelSpeed,

    /// <summary>Force along the tool axis.</summary>
    AxialForce,

    /// <summary>Torque on the spindle.</summary>
    Torque,

    /// <summary>How far the heel of the shoulder or the pin goes below the surface, as the procedure says.</summary>
    PlungeDepth,

    /// <summary>Speed of the plunge along the tool axis.</summary>
    PlungeRate,

    /// <summary>Time at depth before travel starts.</summary>
    DwellTime,

    /// <summary>Angle by which the tool leans back along travel.</summary>
    TiltAngle,

    /// <summary>Temperature measured in or at the tool.</summary>
    ToolTemperature,
}
