using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>What a required thickness is computed for.</summary>
/// <param name="Pressure">Design pressure, gauge, above zero.</param>
/// <param name="InsideRadius">Inside radius, above zero.</param>
/// <param name="AllowableStress">Allowable stress at design temperature, above zero.</param>
/// <param name="JointFactor">Weld joint factor (efficiency E, coefficient z), above zero, at most 1.</param>
public sealed record DesignCase(
    Pressure Pressure,
    Length InsideRadius,
    Pressure AllowableStress,
    double JointFactor
)
{
    /// <summary>Allowable stress times joint factor.</summary>
    public Pressure WeldedStress => AllowableStress * JointFactor;

    internal InputCheck Check() =>
        new InputCheck()
            .Positive("design pressure", Pressure.Megapascals, "MPa")
            .Positive("inside radius", InsideRadius.Millimetres, "mm")
            .Positive("allowable stress", AllowableStress.Megapascals, "MPa")
            .Positive("joint factor", JointFactor)
            .Between("joint factor", JointFactor, 0, 1);

    internal WorkingBuilder Begin(string title, string formula) =>
        Working
            .Of(title, formula)
            .Input("P", "design pressure, gauge", Pressure.Megapascals, "MPa")
            .Input("R", "inside radius", InsideRadius.Millimetres, "mm")
            .Input("S", "allowable stress", AllowableStress.Megapascals, "MPa")
            .Input("E", "weld joint factor", JointFactor);
}
