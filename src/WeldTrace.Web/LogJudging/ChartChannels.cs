using WeldTrace.Domain.Procedures;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Units;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.Components.Charts;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.LogJudging;

/// <summary>A column of a log as it is drawn.</summary>
/// <param name="Column">The column.</param>
/// <param name="Unit">Unit of the site in which it is drawn.</param>
public sealed record ChartChannel(LogColumn Column, Unit Unit);

/// <summary>Which columns of a log are drawn, in which order and unit; the page and its samples agree by this.</summary>
public static class ChartChannels
{
    private static readonly LogChannel[] Drawn =
    [
        LogChannel.AxialForce,
        LogChannel.TraverseForce,
        LogChannel.Torque,
        LogChannel.SpindleSpeed,
        LogChannel.TravelSpeed,
        LogChannel.PlungeDepth,
        LogChannel.ToolTemperature,
    ];

    public static IReadOnlyList<ChartChannel> Of(LogHeader header, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(header);
        return
        [
            .. Drawn
                .Select(channel => header.Columns.FirstOrDefault(c => c.Channel == channel))
                .OfType<LogColumn>()
                .Select(column => new ChartChannel(column, UnitOf(column.Channel, units))),
        ];
    }

    /// <summary>The same with their windows, as the chart takes them.</summary>
    public static IReadOnlyList<ChartSeries> Series(
        IEnumerable<ChartChannel> channels,
        ProcedureContent procedure
    )
    {
        ArgumentNullException.ThrowIfNull(channels);
        ArgumentNullException.ThrowIfNull(procedure);
        return [.. channels.Select(channel => Series(channel, procedure))];
    }

    private static ChartSeries Series(ChartChannel channel, ProcedureContent procedure)
    {
        var window = WatchedChannels.ParameterOf(channel.Column.Channel) is { } parameter
            ? procedure.WindowOf(parameter)
            : null;
        return new ChartSeries(
            LogChannels.NameOf(channel.Column.Channel),
            channel.Unit.Symbol,
            window is null ? null : channel.Unit.FromSi(window.LowerSi),
            window is null ? null : channel.Unit.FromSi(window.UpperSi)
        );
    }

    private static Unit UnitOf(LogChannel channel, UnitSystem units) =>
        LogChannels.QuantityOf(channel) switch
        {
            LogQuantity.Force => SiteUnit.For<Force>(units),
            LogQuantity.Torque => SiteUnit.For<Torque>(units),
            LogQuantity.RotationSpeed => SiteUnit.For<RotationSpeed>(units),
            LogQuantity.Speed => SiteUnit.For<Speed>(units),
            LogQuantity.Length => SiteUnit.For<Length>(units),
            LogQuantity.Temperature => SiteUnit.For<Temperature>(units),
            var other => throw new ArgumentException($"{other} is not drawn.", nameof(channel)),
        };
}
