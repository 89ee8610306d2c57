using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.TestSafety;

/// <summary>
/// Energy stored in a hydrostatic test: water <c>p²·V·β/2</c>, shell <c>p·ΔV/2</c> with the elastic growth ΔV. Integral of p dV; first-order
/// compressibility.
/// </summary>
public sealed record LiquidEnergy : IWorked
{
    private LiquidEnergy(
        Pressure pressure,
        Volume volume,
        double compressibility,
        Volume shellGrowth
    )
    {
        var p = pressure.Pascals;
        Liquid = Energy.FromJoules(p * p * volume.CubicMetres * compressibility / 2);
        Shell = Energy.FromJoules(p * shellGrowth.CubicMetres / 2);
        Working = Working
            .Of("Energy stored in a hydrostatic test", "E = p²·V·β/2 + p·ΔV/2")
            .Input("p", "test pressure, gauge", pressure.Bar, "bar")
            .Input("V", "volume", volume.Litres, "l")
            .Input("β", "compressibility of the liquid", compressibility, "1/Pa")
            .Input("ΔV", "elastic growth of the shell", shellGrowth.CubicCentimetres, "cm³")
            .Result("", "liquid", Liquid.Joules, "J")
            .Result("", "shell", Shell.Joules, "J")
            .From("Integral of p dV; trapped gas is not counted and adds far more.")
            .Build();
    }

    /// <summary>Energy of the compressed liquid.</summary>
    public Energy Liquid { get; }

    /// <summary>Elastic energy of the shell.</summary>
    public Energy Shell { get; }

    /// <summary>Sum of both.</summary>
    public Energy Total => Energy.FromJoules(Liquid.Joules + Shell.Joules);

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the energy.</summary>
    /// <param name="pressure">Test pressure, gauge, above zero.</param>
    /// <param name="volume">Volume of liquid, above zero.</param>
    /// <param name="compressibilityPerPascal">β in 1/Pa, above zero; about 4.5e-10 for water at 20 °C.</param>
    /// <param name="shellGrowth">Elastic growth of the shell at that pressure, zero or more.</param>
    public static Computed<LiquidEnergy> Compute(
        Pressure pressure,
        Volume volume,
        double compressibilityPerPascal,
        Volume shellGrowth
    )
    {
        var check = new InputCheck()
            .Positive("test pressure", pressure.Bar, "bar")
            .Positive("volume", volume.Litres, "l")
            .Positive("compressibility", compressibilityPerPascal, "1/Pa")
            .NotNegative("elastic growth", shellGrowth.CubicCentimetres, "cm³");
        return check.Compute(() =>
            new LiquidEnergy(pressure, volume, compressibilityPerPascal, shellGrowth)
        );
    }
}
