namespace WeldTrace.Web.Components.Charts;

/// <summary>A shaded stretch of the chart with its number, such as an excursion.</summary>
/// <param name="Number">Number under which it stands in the table.</param>
/// <param name="From">Begin on the horizontal axis, in its unit.</param>
/// <param name="To">End on the horizontal axis, in its unit.</param>
public sealed record ChartBand(string Number, double From, double To);
