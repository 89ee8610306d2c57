using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Process;

/// <summary>
/// Mechanical power and line energy from measured torque: <c>P = ω·M (+ Fx·v)</c>, <c>q = η·P/v</c>. The traverse force adds less
/// than 1 % in practice. Share into the work η about 0.95 (Chao, Qi, Tang 2003, abstract read).
/// </summary>
public sealed record PowerInput : IWorked
{
    /// <summary>Usual share of the heat that reaches the work.</summary>
    public const double UsualShare = 0.95;

    private PowerInput(
        RotationSpeed spindle,
        Torque torque,
        Speed travel,
        double share,
        Force? traverseForce
    )
    {
        SpindlePower = Power.FromWatts(spindle.RadiansPerSecond * torque.NewtonMetres);
        TraversePower = Power.FromWatts((traverseForce?.Newtons ?? 0) * travel.MetresPerSecond);
        TotalPower = SpindlePower + TraversePower;
        LineEnergy = LineEnergy.FromJoulesPerMetre(
            share * TotalPower.Watts / travel.MetresPerSecond
        );
        Working = Working
            .Of("Power and line energy", "P = ω·M + Fx·v; q = η·P/v")
            .Input("n", "spindle speed", spindle.RevolutionsPerMinute, "rev/min")
            .Input("M", "spindle torque", torque.NewtonMetres, "N·m")
            .Input("v", "travel speed", travel.MillimetresPerMinute, "mm/min")
            .Input("η", "share into the work", share)
            .OptionalInput("Fx", "traverse force", traverseForce?.Newtons, "N")
            .Step("ω·M", "power of the spindle", SpindlePower.Watts, "W")
            .Step("Fx·v", "power of the traverse", TraversePower.Watts, "W")
            .Result("P", "mechanical power", TotalPower.Watts, "W")
            .Result("q", "line energy into the weld", LineEnergy.JoulesPerMillimetre, "J/mm")
            .From(
                "Definition; share into the work: Chao, Qi, Tang 2003, J. Manuf. Sci. Eng. (abstract read)."
            )
            .Build();
    }

    /// <summary>Power of the spindle, ω·M.</summary>
    public Power SpindlePower { get; }

    /// <summary>Power of the traverse, Fx·v; zero without a force.</summary>
    public Power TraversePower { get; }

    /// <summary>Sum of both.</summary>
    public Power TotalPower { get; }

    /// <summary>Energy per length of weld that reaches the work.</summary>
    public LineEnergy LineEnergy { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes power and line energy.</summary>
    /// <param name="spindle">Spindle speed, above zero.</param>
    /// <param name="torque">Measured spindle torque, zero or more.</param>
    /// <param name="travel">Travel speed, above zero.</param>
    /// <param name="share">Share of the heat that reaches the work, above zero, at most 1.</param>
    /// <param name="traverseForce">Traverse force, or null.</param>
    public static Computed<PowerInput> Compute(
        RotationSpeed spindle,
        Torque torque,
        Speed travel,
        double share = UsualShare,
        Force? traverseForce = null
    )
    {
        var check = new InputCheck()
            .Positive("spindle speed", spindle.RevolutionsPerMinute, "rev/min")
            .NotNegative("spindle torque", torque.NewtonMetres, "N·m")
            .Positive("travel speed", travel.MillimetresPerMinute, "mm/min")
            .Positive("share into the work", share)
            .Between("share into the work", share, 0, 1);
        return check.Compute(() => new PowerInput(spindle, torque, travel, share, traverseForce));
    }
}
