namespace WeldTrace.ProcessLogs.Reading;

/// <summary>Guesses what a column measures from its name and unit.</summary>
internal static class ChannelGuess
{
    private static readonly (LogChannel Channel, string[] Words)[] Vocabulary =
    [
        (LogChannel.Time, ["t", "time", "timestamp", "zeit", "elapsed"]),
        (
            LogChannel.AxialForce,
            ["fz", "axial", "forge", "down", "downforce", "plungeforce", "force"]
        ),
        (LogChannel.TraverseForce, ["fx", "fy", "traverse", "lateral", "side", "path"]),
        (LogChannel.Torque, ["torque", "mz", "m", "drehmoment", "moment"]),
        (LogChannel.SpindleSpeed, ["spindle", "rpm", "speed", "n", "rotation", "drehzahl", "s"]),
        (
            LogChannel.TravelSpeed,
            ["feed", "travel", "traverse", "speed", "v", "feedrate", "vorschub", "welding"]
        ),
        (LogChannel.PlungeDepth, ["z", "depth", "plunge", "penetration"]),
        (LogChannel.AmbientTemperature, ["ambient", "room", "air", "raum", "umgebung", "tamb"]),
        (
            LogChannel.VesselTemperature,
            ["vessel", "gas", "water", "bath", "medium", "wall", "t1", "temp1", "tvessel"]
        ),
        (LogChannel.GaugePressure, ["p", "pressure", "gauge", "p1", "druck"]),
        (LogChannel.ToolTemperature, ["tool", "temperature", "temp", "shoulder", "pin"]),
        (LogChannel.AxisAngle, ["angle", "axis", "c", "theta", "rotary", "table", "phi", "a", "b"]),
        (LogChannel.X, ["x"]),
        (LogChannel.Y, ["y"]),
    ];

    /// <summary>One channel per column; a channel that must not repeat goes to the first column that fits it.</summary>
    public static IReadOnlyList<ColumnMapping> Guess(IReadOnlyList<PreviewColumn> columns)
    {
        var taken = new HashSet<LogChannel>();
        var guessed = new List<ColumnMapping>(columns.Count);
        foreach (var column in columns)
        {
            var isTime = column.IsTimeStamp && !taken.Contains(LogChannel.Time);
            var channel =
                isTime ? LogChannel.Time
                : column.IsNumeric ? ChannelOf(column, taken)
                : LogChannel.Ignored;
            taken.Add(channel);
            var unit = isTime ? LogUnits.TimeStamp : UnitOf(column);
            guessed.Add(new(column.Header, channel, unit, FactorOf(column, channel)));
        }

        return guessed;
    }

    private static LogChannel ChannelOf(PreviewColumn column, HashSet<LogChannel> taken)
    {
        var quantity = LogUnits.Find(column.Unit)?.Quantity;
        var words = Words(column.Name);
        foreach (var (channel, vocabulary) in Vocabulary)
        {
            if (
                quantity == LogChannels.QuantityOf(channel)
                && !taken.Contains(channel)
                && words.Any(vocabulary.Contains)
            )
            {
                return channel;
            }
        }

        return LogChannel.Other;
    }

    private static string UnitOf(PreviewColumn column) =>
        LogUnits.Find(column.Unit)?.Symbol ?? column.Unit;

    private static double FactorOf(PreviewColumn column, LogChannel channel) =>
        channel == LogChannel.PlungeDepth && Words(column.Name).Contains("z") ? -1 : 1;

    private static string[] Words(string name) =>
        name.ToLowerInvariant()
            .Split([' ', '_', '-', '.', '/', ':'], StringSplitOptions.RemoveEmptyEntries);
}
