using WeldTrace.Domain.Procedures;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Web.LogJudging;

/// <summary>Which channel of a log shows which parameter of a procedure.</summary>
public static class WatchedChannels
{
    private static readonly Dictionary<WeldParameter, LogChannel> Channels = new()
    {
        [WeldParameter.SpindleSpeed] = LogChannel.SpindleSpeed,
        [WeldParameter.TravelSpeed] = LogChannel.TravelSpeed,
        [WeldParameter.AxialForce] = LogChannel.AxialForce,
        [WeldParameter.Torque] = LogChannel.Torque,
        [WeldParameter.PlungeDepth] = LogChannel.PlungeDepth,
        [WeldParameter.ToolTemperature] = LogChannel.ToolTemperature,
    };

    /// <summary>The parameters that a log can show.</summary>
    public static IEnumerable<WeldParameter> Parameters => Channels.Keys;

    /// <summary>The parameters that a log is judged by: those of a channel, and the dwell, which is a time between phases.</summary>
    public static IEnumerable<WeldParameter> Judged =>
        Channels.Keys.Append(WeldParameter.DwellTime);

    /// <summary>The channel that shows a parameter over the traverse; null when a log never does.</summary>
    public static LogChannel? Of(WeldParameter parameter) =>
        Channels.TryGetValue(parameter, out var channel) ? channel : null;

    /// <summary>The parameter that a channel shows; null when it shows none.</summary>
    public static WeldParameter? ParameterOf(LogChannel channel) =>
        Channels
            .Where(pair => pair.Value == channel)
            .Select(pair => (WeldParameter?)pair.Key)
            .FirstOrDefault();
}
