using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Process;

/// <summary>
/// Heat from the geometry of the tool: <c>Q1 = 2/3·π·τ·ω·(Rs³ − Rp³)·(1 + tan α)</c>, <c>Q2 = 2·π·τ·ω·Rp²·Hp</c>, <c>Q3 = 2/3·π·τ·ω·Rp³</c>
/// (Schmidt, Hattel, Wert 2004, from memory; shares 0.86/0.11/0.03 of the paper agree). Uniform shear, cylindrical pin, no
/// thread, no tilt: within tens of per cent. Measured torque is the base for power.
/// </summary>
public sealed record AnalyticHeat : IWorked
{
    /// <summary>Share of the plastic work that turns into heat (Chao, Qi, Tang 2003, abstract read); for plausibility.</summary>
    public const double PlasticWorkShare = 0.80;

    private AnalyticHeat(ToolGeometry tool, RotationSpeed spindle, Pressure shear)
    {
        var (rs, rp) = (tool.ShoulderRadius.Metres, tool.PinRadius.Metres);
        var scale = Math.PI * shear.Pascals * spindle.RadiansPerSecond;
        var cone = 1 + Math.Tan(tool.ConeAngle.Radians);
        Shoulder = Power.FromWatts(2.0 / 3 * scale * ((rs * rs * rs) - (rp * rp * rp)) * cone);
        PinSide = Power.FromWatts(2 * scale * rp * rp * tool.PinLength.Metres);
        PinTip = Power.FromWatts(2.0 / 3 * scale * rp * rp * rp);
        Torque = Torque.FromNewtonMetres(Total.Watts / spindle.RadiansPerSecond);
        Working = Show(tool, spindle, shear);
    }

    /// <summary>Heat of the shoulder, Q1.</summary>
    public Power Shoulder { get; }

    /// <summary>Heat of the pin side, Q2.</summary>
    public Power PinSide { get; }

    /// <summary>Heat of the pin tip, Q3.</summary>
    public Power PinTip { get; }

    /// <summary>Sum of the three.</summary>
    public Power Total => Shoulder + PinSide + PinTip;

    /// <summary>Torque that belongs to it, Q/ω.</summary>
    public Torque Torque { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the heat.</summary>
    /// <param name="tool">Surfaces of the tool.</param>
    /// <param name="spindle">Spindle speed, above zero.</param>
    /// <param name="shear">Contact shear stress, above zero; see <see cref="ContactShear"/>.</param>
    public static Computed<AnalyticHeat> Compute(
        ToolGeometry tool,
        RotationSpeed spindle,
        Pressure shear
    )
    {
        ArgumentNullException.ThrowIfNull(tool);
        var check = new InputCheck()
            .Positive("pin radius", tool.PinRadius.Millimetres, "mm")
            .NotNegative("pin length", tool.PinLength.Millimetres, "mm")
            .Between("cone angle", tool.ConeAngle.Degrees, 0, 80, "°")
            .Positive("spindle speed", spindle.RevolutionsPerMinute, "rev/min")
            .Positive("contact shear stress", shear.Megapascals, "MPa")
            .Require(
                tool.ShoulderRadius > tool.PinRadius,
                RefusalReason.OutOfRange,
                "shoulder radius",
                "It is not larger than the pin radius.",
                "Check both radii against the tool drawing."
            );
        return check.Compute(() => new AnalyticHeat(tool, spindle, shear));
    }

    /// <summary>Heat between sticking and sliding: δ·Q_stick + (1 − δ)·Q_slide.</summary>
    /// <param name="stick">Heat of full sticking.</param>
    /// <param name="slide">Heat of full sliding.</param>
    /// <param name="contactState">δ, ratio of matrix to tool surface speed, 0 (sliding) to 1 (sticking).</param>
    /// <exception cref="ArgumentOutOfRangeException">The contact state is outside 0 to 1.</exception>
    public static Power Partial(AnalyticHeat stick, AnalyticHeat slide, double contactState)
    {
        ArgumentNullException.ThrowIfNull(stick);
        ArgumentNullException.ThrowIfNull(slide);
        ArgumentOutOfRangeException.ThrowIfNegative(contactState);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(contactState, 1);
        return (stick.Total * contactState) + (slide.Total * (1 - contactState));
    }

    private Working Show(ToolGeometry tool, RotationSpeed spindle, Pressure shear) =>
        Working
            .Of(
                "Heat from the geometry of the tool",
                "Q1 = 2/3·π·τ·ω·(Rs³ − Rp³)·(1 + tan α); Q2 = 2·π·τ·ω·Rp²·Hp; Q3 = 2/3·π·τ·ω·Rp³; M = ΣQ/ω"
            )
            .Input("Rs", "shoulder radius", tool.ShoulderRadius.Millimetres, "mm")
            .Input("Rp", "pin radius", tool.PinRadius.Millimetres, "mm")
            .Input("Hp", "pin length", tool.PinLength.Millimetres, "mm")
            .Input("α", "cone angle of the shoulder", tool.ConeAngle.Degrees, "°")
            .Input("n", "spindle speed", spindle.RevolutionsPerMinute, "rev/min")
            .Input("τ", "contact shear stress", shear.Megapascals, "MPa")
            .Step("Q1", "heat of the shoulder", Shoulder.Watts, "W")
            .Step("Q2", "heat of the pin side", PinSide.Watts, "W")
            .Step("Q3", "heat of the pin tip", PinTip.Watts, "W")
            .Result("ΣQ", "heat", Total.Watts, "W")
            .Result("M", "torque", Torque.NewtonMetres, "N·m")
            .From(
                "Schmidt, Hattel, Wert 2004 (from memory); within tens of per cent, measured torque goes before it."
            )
            .Build();
}
