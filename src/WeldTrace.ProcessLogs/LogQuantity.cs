namespace WeldTrace.ProcessLogs;

/// <summary>Kind of quantity that a channel measures.</summary>
public enum LogQuantity
{
    None,
    Time,
    RotationSpeed,
    Speed,
    Force,
    Torque,
    Length,
    Temperature,
    Angle,
    Pressure,
}
