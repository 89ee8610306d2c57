using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Process;

/// <summary>The surfaces of a tool that make heat: a plain or concave shoulder and a cylindrical pin.</summary>
/// <param name="ShoulderRadius">Shoulder radius, above the pin radius.</param>
/// <param name="PinRadius">Pin radius, above zero.</param>
/// <param name="PinLength">Pin length, zero or more.</param>
/// <param name="ConeAngle">Angle of a concave shoulder, zero for a flat one, below 90°.</param>
public sealed record ToolGeometry(
    Length ShoulderRadius,
    Length PinRadius,
    Length PinLength,
    Angle ConeAngle
);
