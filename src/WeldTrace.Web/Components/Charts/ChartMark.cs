namespace WeldTrace.Web.Components.Charts;

/// <summary>A moment that another record speaks of.</summary>
/// <param name="Letter">Letter under which it stands in the list beside.</param>
/// <param name="Word">What it is.</param>
/// <param name="At">On the horizontal axis, in its unit.</param>
public sealed record ChartMark(string Letter, string Word, double At);
