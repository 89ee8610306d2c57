using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Joints;

/// <summary>What the strength of the parent material is.</summary>
public enum ParentReference
{
    /// <summary>Measured on the same plate and temper.</summary>
    SamePlate,

    /// <summary>Minimum of the material standard.</summary>
    StandardMinimum,
}

/// <summary>
/// Joint efficiency: cross-weld ultimate strength over that of the parent, for each specimen. Definition; which parent was used is
/// stated with the result. A value above 1 or below 0.4 deserves a look at the entries.
/// </summary>
public sealed record JointEfficiency : IWorked
{
    private JointEfficiency(
        IReadOnlyList<TensileSpecimen> specimens,
        Pressure parent,
        ParentReference reference,
        WrittenLimit? least
    )
    {
        Strengths = [.. specimens.Select(specimen => specimen.Strength)];
        Efficiencies = [.. Strengths.Select(strength => strength / parent)];
        Reference = reference;
        Judgement = least is null ? null : Comparison.AtLeast(new(Minimum, ""), least);
        Working = Show(specimens, parent);
    }

    /// <summary>Strength of each specimen.</summary>
    public IReadOnlyList<Pressure> Strengths { get; }

    /// <summary>Efficiency of each specimen.</summary>
    public IReadOnlyList<double> Efficiencies { get; }

    /// <summary>Mean of the efficiencies.</summary>
    public double Mean => Efficiencies.Average();

    /// <summary>Smallest efficiency; the one that is judged.</summary>
    public double Minimum => Efficiencies.Min();

    /// <summary>Which parent strength was used.</summary>
    public ParentReference Reference { get; }

    /// <summary>Whether all efficiencies lie between 0.4 and 1.</summary>
    public bool IsPlausible => Efficiencies.All(value => value is >= 0.4 and <= 1);

    /// <summary>Judgement of the smallest efficiency; null without a limit.</summary>
    public Judgement? Judgement { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the efficiency of a set of specimens.</summary>
    /// <param name="specimens">At least one.</param>
    /// <param name="parentUltimate">Ultimate strength of the parent, above zero.</param>
    /// <param name="reference">What that strength is.</param>
    /// <param name="least">Least efficiency, a plain number, or null.</param>
    public static Computed<JointEfficiency> Compute(
        IReadOnlyList<TensileSpecimen> specimens,
        Pressure parentUltimate,
        ParentReference reference,
        WrittenLimit? least = null
    )
    {
        ArgumentNullException.ThrowIfNull(specimens);
        var check = new InputCheck()
            .Positive("parent strength", parentUltimate.Megapascals, "MPa")
            .LimitOf("least efficiency", least, Units.Dimension.Number, "as a plain number or in %")
            .Require(
                specimens.Count > 0,
                RefusalReason.TooFewData,
                "specimens",
                "There is none.",
                "Enter at least one specimen."
            );
        for (var i = 0; i < specimens.Count; i++)
        {
            specimens[i].Check(check, i + 1);
        }

        return check.Compute(() =>
            new JointEfficiency(specimens, parentUltimate, reference, least)
        );
    }

    private Working Show(IReadOnlyList<TensileSpecimen> specimens, Pressure parent)
    {
        var working = Working
            .Of("Joint efficiency", "σ = F/(w·t); η = σ/σ_parent")
            .Input(
                "σ_parent",
                Reference == ParentReference.SamePlate
                    ? "parent, same plate"
                    : "parent, minimum of the standard",
                parent.Megapascals,
                "MPa"
            );
        for (var i = 0; i < specimens.Count; i++)
        {
            working.Step("σ", $"strength of specimen {i + 1}", Strengths[i].Megapascals, "MPa");
        }

        return working
            .Result("", "mean efficiency", Mean)
            .Result("", "smallest efficiency", Minimum)
            .From("Definition.")
            .Validity(
                Validity.When(
                    IsPlausible,
                    "Efficiencies lie between 0.4 and 1.",
                    "check force, section and parent strength."
                )
            )
            .Build();
    }
}
