using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Process;

/// <summary>
/// Penetration ligament: nominal distance from the tip of the pin to the backing while welding (AWS D17.3/D17.3M:2016, clause 3):
/// <c>l = t − z</c>, where <c>z</c> is the plunge depth of the tip, or without one <c>z = L + h</c> from the pin's length and the
/// heel plunge depth. Predicts root flaws; tilt, wear and compliance change it.
/// </summary>
public sealed record PenetrationLigament : IWorked
{
    private PenetrationLigament(Length thickness, Length pin, Length? plunge, Length heel)
    {
        Depth = plunge ?? pin + heel;
        Ligament = thickness - Depth;
        var working = Working
            .Of("Penetration ligament", plunge is null ? "l = t − (L + h)" : "l = t − z")
            .Input("t", "thickness under the tool", thickness.Millimetres, "mm");
        working = plunge is { } depth
            ? working.Input("z", "plunge depth of the tip", depth.Millimetres, "mm")
            : working
                .Input("L", "pin length", pin.Millimetres, "mm")
                .Input("h", "heel plunge depth", heel.Millimetres, "mm")
                .Step("z", "plunge depth of the tip", Depth.Millimetres, "mm");
        Working = working
            .Result("l", "penetration ligament", Ligament.Millimetres, "mm")
            .From("Term of AWS D17.3/D17.3M:2016, clause 3.")
            .Validity(
                Validity.When(
                    Ligament > Length.Zero,
                    "Nominal; tilt, wear of the pin and compliance of the machine change it.",
                    "the tip reaches the backing."
                )
            )
            .Build();
    }

    /// <summary>Depth of the tip below the surface.</summary>
    public Length Depth { get; }

    /// <summary>What is left below the tip; negative when it goes into the backing.</summary>
    public Length Ligament { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the ligament.</summary>
    /// <param name="thickness">Thickness under the tool, above zero.</param>
    /// <param name="pinLength">Length of the pin, above zero.</param>
    /// <param name="plungeDepth">Depth of the tip, zero or more; null when it follows from the pin.</param>
    /// <param name="heelPlungeDepth">Depth of the heel, zero or more; used without a plunge depth. Null counts as zero.</param>
    public static Computed<PenetrationLigament> Compute(
        Length thickness,
        Length pinLength,
        Length? plungeDepth = null,
        Length? heelPlungeDepth = null
    )
    {
        var check = new InputCheck()
            .Positive("thickness", thickness.Millimetres, "mm")
            .Positive("pin length", pinLength.Millimetres, "mm")
            .NotNegative("plunge depth", plungeDepth?.Millimetres ?? 0, "mm")
            .NotNegative("heel plunge depth", heelPlungeDepth?.Millimetres ?? 0, "mm");
        return check.Compute(() =>
            new PenetrationLigament(
                thickness,
                pinLength,
                plungeDepth,
                heelPlungeDepth ?? Length.Zero
            )
        );
    }
}
