using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.TestSafety;

/// <summary>
/// Energy stored in compressed gas. Isentropic <c>P·V/(k − 1)·(1 − (Pa/P)^((k−1)/k))</c> (ASME PCC-2 article 501 appendix II, read);
/// Brode <c>(P − Pa)·V/(k − 1)</c>; isothermal <c>P·V·ln(P/Pa)</c>, an upper bound; availability <c>P·V·(ln(P/Pa) − 1 + Pa/P)</c> (Crowl 2003,
/// read). Ideal gas: above about 200 bar real-gas energies are needed.
/// </summary>
public sealed record GasEnergy : IWorked
{
    private const double IdealUpToBar = 200;

    private GasEnergy(GasCharge charge)
    {
        Charge = charge;
        var (k, ratio) = (charge.HeatRatio, charge.Absolute / charge.Atmosphere);
        var product = charge.Absolute.Pascals * charge.Volume.CubicMetres;
        Isentropic = Energy.FromJoules(product / (k - 1) * (1 - Math.Pow(ratio, (1 - k) / k)));
        Brode = Energy.FromJoules(
            (charge.Absolute - charge.Atmosphere).Pascals * charge.Volume.CubicMetres / (k - 1)
        );
        Isothermal = Energy.FromJoules(product * Math.Log(ratio));
        Availability = Energy.FromJoules(product * (Math.Log(ratio) - 1 + (1 / ratio)));
        Working = Show();
    }

    /// <summary>The gas.</summary>
    public GasCharge Charge { get; }

    /// <summary>Energy of an isentropic expansion; the one that decides distances.</summary>
    public Energy Isentropic { get; }

    /// <summary>Energy of heating at constant volume (Brode).</summary>
    public Energy Brode { get; }

    /// <summary>Energy of an isothermal expansion; the upper bound.</summary>
    public Energy Isothermal { get; }

    /// <summary>Thermodynamic availability.</summary>
    public Energy Availability { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the energies.</summary>
    public static Computed<GasEnergy> Compute(GasCharge charge)
    {
        ArgumentNullException.ThrowIfNull(charge);
        var check = new InputCheck()
            .Positive("air pressure", charge.Atmosphere.Bar, "bar")
            .Positive("volume", charge.Volume.Litres, "l")
            .Between("ratio of specific heats", charge.HeatRatio, 1.01, 2)
            .Require(
                charge.Absolute > charge.Atmosphere,
                RefusalReason.OutOfRange,
                "absolute pressure",
                "It is not above the air pressure.",
                "Enter the absolute pressure, gauge plus air pressure."
            );
        return check.Compute(() => new GasEnergy(charge));
    }

    /// <summary>
    /// Isentropic energy with the exponent rounded to 0.286, as printed for air and nitrogen: <c>2.5·P·V·(1 − (Pa/P)^0.286)</c>. Refused for other gases.
    /// </summary>
    public static Computed<Energy> WithRoundedExponent(GasCharge charge)
    {
        var full = Compute(charge);
        if (full.IsRefused)
        {
            return Computed.Refused<Energy>(full.Refusals);
        }

        if (charge.HeatRatio is not GasCharge.Diatomic)
        {
            return Computed.Refused<Energy>(
                new Refusal(
                    RefusalReason.OutsideValidity,
                    "ratio of specific heats",
                    "The rounded exponent 0.286 holds for 1.4 only.",
                    "Use the isentropic energy."
                )
            );
        }

        var product = charge.Absolute.Pascals * charge.Volume.CubicMetres;
        var energy = Energy.FromJoules(
            2.5 * product * (1 - Math.Pow(charge.Atmosphere / charge.Absolute, 0.286))
        );
        var working = Working
            .Of("Stored energy, rounded exponent", "E = 2.5·P·V·(1 − (Pa/P)^0.286)")
            .Input("P", "absolute pressure", charge.Absolute.Bar, "bar")
            .Input("Pa", "air pressure", charge.Atmosphere.Bar, "bar")
            .Input("V", "volume", charge.Volume.Litres, "l")
            .Result("E", "stored energy", energy.Joules, "J")
            .From("ASME PCC-2 article 501 appendix II, equation II-2 (read).")
            .Build();
        return Computed.Of(energy, working);
    }

    private Working Show() =>
        Working
            .Of(
                "Energy stored in compressed gas",
                "isentropic E = P·V/(k − 1)·(1 − (Pa/P)^((k−1)/k)); Brode (P − Pa)·V/(k − 1); isothermal P·V·ln(P/Pa); availability P·V·(ln(P/Pa) − 1 + Pa/P)"
            )
            .Input("P", "absolute pressure", Charge.Absolute.Bar, "bar")
            .Input("Pa", "air pressure", Charge.Atmosphere.Bar, "bar")
            .Input("V", "volume", Charge.Volume.Litres, "l")
            .Input("k", "ratio of specific heats", Charge.HeatRatio)
            .Result("E", "isentropic", Isentropic.Joules, "J")
            .Result("", "Brode", Brode.Joules, "J")
            .Result("", "isothermal, upper bound", Isothermal.Joules, "J")
            .Result("", "availability", Availability.Joules, "J")
            .From("ASME PCC-2 article 501 appendix II (read); Crowl 2003 (read).")
            .Validity(
                Validity.When(
                    Charge.Absolute.Bar <= IdealUpToBar,
                    "The pressure is at most 200 bar, where the gas is nearly ideal.",
                    "real-gas internal energies are needed instead of the ideal-gas figure."
                )
            )
            .Build();
}
