namespace WeldTrace.ProcessLogs;

/// <summary>What a column of a log measures.</summary>
public enum LogChannel
{
    /// <summary>A number that is kept but not judged.</summary>
    Other,

    /// <summary>A column that is not kept, for instance text.</summary>
    Ignored,
    Time,
    SpindleSpeed,
    TravelSpeed,

    /// <summary>Force along the tool, positive when the tool presses on the work.</summary>
    AxialForce,
    TraverseForce,
    Torque,

    /// <summary>Depth below the surface of the work, positive inside the work.</summary>
    PlungeDepth,
    ToolTemperature,
    AxisAngle,
    X,
    Y,

    /// <summary>Pressure in the vessel above that of the air.</summary>
    GaugePressure,

    /// <summary>Temperature of a vessel under test, or of what fills it.</summary>
    VesselTemperature,

    /// <summary>Temperature of the room.</summary>
    AmbientTemperature,
}
