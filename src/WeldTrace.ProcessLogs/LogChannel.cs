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
}
