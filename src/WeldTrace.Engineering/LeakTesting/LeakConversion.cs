using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.LeakTesting;

/// <summary>Conditions under which a leak was measured or is in service.</summary>
/// <param name="Gas">The gas.</param>
/// <param name="Upstream">Absolute pressure inside, above <paramref name="Downstream"/>.</param>
/// <param name="Downstream">Absolute pressure outside, zero or more.</param>
public sealed record LeakCondition(TestGas Gas, Pressure Upstream, Pressure Downstream);

/// <summary>
/// A leak rate carried to another gas and pressure. Laminar viscous: <c>q ∝ (p_up² − p_down²)/µ</c>; molecular:
/// <c>q ∝ (p_up − p_down)/√M</c>. Real leaks are mixtures of both: the results are a range. Usual forms; regimes about
/// above 1e-5 and below 1e-7 Pa·m³/s (equipment makers' guides).
/// </summary>
public sealed record LeakConversion : IWorked
{
    private LeakConversion(LeakRate measured, LeakCondition from, LeakCondition to)
    {
        var (fromUp, fromDown) = (from.Upstream.Pascals, from.Downstream.Pascals);
        var (toUp, toDown) = (to.Upstream.Pascals, to.Downstream.Pascals);
        var squares =
            ((toUp * toUp) - (toDown * toDown)) / ((fromUp * fromUp) - (fromDown * fromDown));
        ViscousFactor = squares * from.Gas.MicropascalSeconds / to.Gas.MicropascalSeconds;
        MolecularFactor =
            (toUp - toDown)
            / (fromUp - fromDown)
            * Math.Sqrt(from.Gas.GramsPerMole / to.Gas.GramsPerMole);
        (Viscous, Molecular) = (measured * ViscousFactor, measured * MolecularFactor);
        Working = Show(measured, from, to);
    }

    /// <summary>Rate under the new conditions if the flow is laminar and viscous.</summary>
    public LeakRate Viscous { get; }

    /// <summary>Rate under the new conditions if the flow is molecular.</summary>
    public LeakRate Molecular { get; }

    /// <summary>Ratio of the rates in viscous flow.</summary>
    public double ViscousFactor { get; }

    /// <summary>Ratio of the rates in molecular flow.</summary>
    public double MolecularFactor { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Carries a rate from one condition to another.</summary>
    public static Computed<LeakConversion> Compute(
        LeakRate measured,
        LeakCondition from,
        LeakCondition to
    )
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        var check = Check(Check(new InputCheck(), from, "test"), to, "service");
        return check.Compute(() => new LeakConversion(measured, from, to));
    }

    private static InputCheck Check(InputCheck check, LeakCondition condition, string name) =>
        check
            .NotNegative($"{name} pressure outside", condition.Downstream.Bar, "bar")
            .Require(
                condition.Upstream > condition.Downstream,
                RefusalReason.OutOfRange,
                $"{name} pressure inside",
                "It is not above the pressure outside.",
                "Enter absolute pressures, the inside one higher."
            )
            .Positive($"{name} gas viscosity", condition.Gas.MicropascalSeconds, "µPa·s")
            .Positive($"{name} gas molar mass", condition.Gas.GramsPerMole, "g/mol");

    private Working Show(LeakRate measured, LeakCondition from, LeakCondition to) =>
        Working
            .Of(
                $"Leak rate from {from.Gas.Name} to {to.Gas.Name}",
                "viscous: q2 = q1·(p2u² − p2d²)/(p1u² − p1d²)·µ1/µ2; molecular: q2 = q1·(p2u − p2d)/(p1u − p1d)·√(M1/M2)"
            )
            .Input("q1", "measured leak rate", measured.SiValue, "Pa·m³/s")
            .Input("p1u", "test pressure inside, absolute", from.Upstream.Bar, "bar")
            .Input("p1d", "test pressure outside, absolute", from.Downstream.Bar, "bar")
            .Input("p2u", "service pressure inside, absolute", to.Upstream.Bar, "bar")
            .Input("p2d", "service pressure outside, absolute", to.Downstream.Bar, "bar")
            .Input("µ1", "viscosity of the test gas", from.Gas.MicropascalSeconds, "µPa·s")
            .Input("µ2", "viscosity of the service gas", to.Gas.MicropascalSeconds, "µPa·s")
            .Input("M1", "molar mass of the test gas", from.Gas.GramsPerMole, "g/mol")
            .Input("M2", "molar mass of the service gas", to.Gas.GramsPerMole, "g/mol")
            .Result("q2", "leak rate, viscous flow", Viscous.SiValue, "Pa·m³/s")
            .Result("q2", "leak rate, molecular flow", Molecular.SiValue, "Pa·m³/s")
            .From(
                "Usual forms; viscosities at 20 °C from memory. Real leaks are mixtures: take the range."
            )
            .Build();
}
