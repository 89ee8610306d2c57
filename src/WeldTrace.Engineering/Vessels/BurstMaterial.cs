using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>Strength of a wall for burst predictions.</summary>
/// <param name="Yield">Yield strength, above zero, at most the ultimate strength.</param>
/// <param name="Ultimate">Ultimate strength, above zero.</param>
/// <param name="HardeningExponent">Strain-hardening exponent n of σ = K·εⁿ, above zero, below 1.</param>
/// <param name="WeldFactor">Strength of the weld that carries the hoop stress over that of the parent; 1 without one.</param>
public sealed record BurstMaterial(
    Pressure Yield,
    Pressure Ultimate,
    double HardeningExponent,
    double WeldFactor = 1
)
{
    internal InputCheck Check(InputCheck check) =>
        check
            .Positive("yield strength", Yield.Megapascals, "MPa")
            .Positive("ultimate strength", Ultimate.Megapascals, "MPa")
            .Between("hardening exponent", HardeningExponent, 0.001, 0.999)
            .Positive("weld factor", WeldFactor)
            .Between("weld factor", WeldFactor, 0, 1)
            .Require(
                Yield <= Ultimate,
                RefusalReason.OutOfRange,
                "yield strength",
                "It is above the ultimate strength.",
                "Check which of the two is which."
            );
}
