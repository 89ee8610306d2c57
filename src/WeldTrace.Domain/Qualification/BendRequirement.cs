namespace WeldTrace.Domain.Qualification;

/// <summary>What a bend test asks.</summary>
/// <param name="FormerMillimetres">Largest diameter of the former, in mm.</param>
/// <param name="Derivation">How it follows, or where it stands.</param>
/// <param name="CrackMillimetres">Longest crack permitted on the tension face, in mm.</param>
public sealed record BendRequirement(
    decimal FormerMillimetres,
    string Derivation,
    decimal CrackMillimetres
)
{
    /// <summary>What a qualification's plan asks; the plan has bend tests.</summary>
    public static BendRequirement Of(QualificationPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new(plan.Former!.Millimetres, plan.Former.Derivation, plan.BendCrack!.Value);
    }
}
