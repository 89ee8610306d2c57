using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Web.Demo;

/// <summary>A stretch of an invented run in which the axial force is off.</summary>
/// <param name="At">Angle travelled from the start of the pass.</param>
/// <param name="Length">Length along the seam.</param>
/// <param name="Change">Added to the axial force; negative for a drop.</param>
internal sealed record DemoExcursion(Angle At, Length Length, Force Change);
