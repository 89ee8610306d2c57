namespace WeldTrace.Web.Components.Charts;

/// <summary>Where the tool was at a time.</summary>
/// <param name="At">On the horizontal axis, in its unit.</param>
/// <param name="Place">Along the seam, in the unit of places.</param>
/// <param name="Degrees">Along the travel from the start of the pass; null on a straight seam.</param>
public sealed record ChartPlace(double At, double Place, double? Degrees);
