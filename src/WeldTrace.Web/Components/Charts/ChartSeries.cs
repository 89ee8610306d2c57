namespace WeldTrace.Web.Components.Charts;

/// <summary>One channel of a chart; channels of one unit share a strip.</summary>
/// <param name="Name">Plain name, such as axial force.</param>
/// <param name="Unit">Unit of its numbers.</param>
/// <param name="LowerInUnit">Lower limit drawn as a dashed line.</param>
/// <param name="UpperInUnit">Upper limit drawn as a dashed line.</param>
public sealed record ChartSeries(
    string Name,
    string Unit,
    double? LowerInUnit = null,
    double? UpperInUnit = null
);
