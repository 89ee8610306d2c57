namespace WeldTrace.ProcessLogs;

/// <summary>What each channel measures and is called.</summary>
public static class LogChannels
{
    /// <summary>The quantity that a channel measures.</summary>
    public static LogQuantity QuantityOf(LogChannel channel) =>
        channel switch
        {
            LogChannel.Time => LogQuantity.Time,
            LogChannel.SpindleSpeed => LogQuantity.RotationSpeed,
            LogChannel.TravelSpeed => LogQuantity.Speed,
            LogChannel.AxialForce or LogChannel.TraverseForce => LogQuantity.Force,
            LogChannel.Torque => LogQuantity.Torque,
            LogChannel.PlungeDepth or LogChannel.X or LogChannel.Y => LogQuantity.Length,
            LogChannel.ToolTemperature
            or LogChannel.VesselTemperature
            or LogChannel.AmbientTemperature => LogQuantity.Temperature,
            LogChannel.GaugePressure => LogQuantity.Pressure,
            LogChannel.AxisAngle => LogQuantity.Angle,
            _ => LogQuantity.None,
        };

    /// <summary>The channel in words.</summary>
    public static string NameOf(LogChannel channel) =>
        channel switch
        {
            LogChannel.Time => "time",
            LogChannel.SpindleSpeed => "spindle speed",
            LogChannel.TravelSpeed => "travel speed",
            LogChannel.AxialForce => "axial force",
            LogChannel.TraverseForce => "traverse force",
            LogChannel.Torque => "torque",
            LogChannel.PlungeDepth => "plunge depth",
            LogChannel.ToolTemperature => "tool temperature",
            LogChannel.AxisAngle => "axis angle",
            LogChannel.X => "X position",
            LogChannel.Y => "Y position",
            LogChannel.GaugePressure => "gauge pressure",
            LogChannel.VesselTemperature => "vessel temperature",
            LogChannel.AmbientTemperature => "ambient temperature",
            LogChannel.Ignored => "not kept",
            _ => "other",
        };

    internal static bool MayRepeat(LogChannel channel) =>
        channel is LogChannel.Other or LogChannel.Ignored;
}
