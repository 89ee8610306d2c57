using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Process;

/// <summary>
/// How far the deepest plunge of a pass stays from the least penetration ligament: <c>m = (t − z) − l</c>, where <c>t − z</c> is the
/// ligament below the tip (term of AWS D17.3/D17.3M:2016, clause 3).
/// </summary>
public sealed record LigamentMargin : IWorked
{
    private LigamentMargin(Length thickness, Length deepest, Length? least)
    {
        Ligament = thickness - deepest;
        Margin = Ligament - (least ?? Length.Zero);
        var working = Working
            .Of("Margin of the plunge depth", least is null ? "m = t − z" : "m = (t − z) − l")
            .Input("t", "thickness under the tool", thickness.Millimetres, "mm")
            .Input("z", "greatest plunge depth of the pass", deepest.Millimetres, "mm");
        working = least is { } given
            ? working
                .Input("l", "least ligament of the procedure", given.Millimetres, "mm")
                .Step("t − z", "ligament at that depth", Ligament.Millimetres, "mm")
            : working;
        Working = working
            .Result("m", "margin", Margin.Millimetres, "mm")
            .From(
                "Penetration ligament: term of AWS D17.3/D17.3M:2016, clause 3; the margin is a difference."
            )
            .Validity(
                Validity.When(
                    Margin >= Length.Zero,
                    "As the machine logged the depth of the tip; tilt, wear of the pin and compliance of the machine change it.",
                    least is null
                        ? "the tip reaches the backing."
                        : "less is left than the procedure asks for."
                )
            )
            .Build();
    }

    /// <summary>What is left below the tip at its deepest; negative when it goes into the backing.</summary>
    public Length Ligament { get; }

    /// <summary>That less the least ligament; negative when it is not kept.</summary>
    public Length Margin { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the margin.</summary>
    /// <param name="thickness">Thickness under the tool, above zero.</param>
    /// <param name="deepest">Greatest plunge depth of the tip, zero or more.</param>
    /// <param name="leastLigament">Least ligament that the procedure allows, zero or more; null: the backing itself is the limit.</param>
    public static Computed<LigamentMargin> Compute(
        Length thickness,
        Length deepest,
        Length? leastLigament = null
    ) =>
        new InputCheck()
            .Positive("thickness", thickness.Millimetres, "mm")
            .NotNegative("plunge depth", deepest.Millimetres, "mm")
            .NotNegative("least ligament", leastLigament?.Millimetres ?? 0, "mm")
            .Compute(() => new LigamentMargin(thickness, deepest, leastLigament));
}
