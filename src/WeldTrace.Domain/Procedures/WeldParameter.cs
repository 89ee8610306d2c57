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

    /// <summary>How far the pin's tip goes below the surface of the work.</summary>
    PlungeDepth,

    /// <summary>Speed of the plunge along the tool axis.</summary>
    PlungeRate,

    /// <summary>Time at depth before travel starts.</summary>
    DwellTime,

    /// <summary>Angle by which the tool leans back along travel.</summary>
    TiltAngle,

    /// <summary>Temperature measured in or at the tool.</summary>
    ToolTemperature,

    /// <summary>How far the heel of the shoulder goes below the surface of the work.</summary>
    HeelPlungeDepth,

    /// <summary>Distance from the pin's tip to the backing while welding.</summary>
    PenetrationLigament,

    /// <summary>Time at depth after travel has stopped.</summary>
    EndDwellTime,

    /// <summary>Time in which travel reaches its speed.</summary>
    RampTime,

    /// <summary>Angle by which the tool leans sideways; positive towards the advancing side.</summary>
    SideTiltAngle,

    /// <summary>Distance of the tool's axis from the joint line; positive towards the advancing side.</summary>
    LateralOffset,
}
