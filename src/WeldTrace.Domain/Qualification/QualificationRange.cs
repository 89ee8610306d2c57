using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;

namespace WeldTrace.Domain.Qualification;

/// <summary>Window of an essential parameter as qualified, in its coherent SI unit.</summary>
/// <param name="Parameter">Parameter.</param>
/// <param name="LowerSi">Least qualified value.</param>
/// <param name="UpperSi">Greatest qualified value.</param>
/// <param name="Words">The window as the procedure stated it.</param>
public sealed record QualifiedWindow(
    WeldParameter Parameter,
    double LowerSi,
    double UpperSi,
    string Words
);

/// <summary>An essential variable that stays as tested.</summary>
/// <param name="Name">The trade's word for it.</param>
/// <param name="Text">What was tested.</param>
public sealed record TestedValue(string Name, string Text);

/// <summary>What a qualification covers, by the edition of a rule set.</summary>
/// <param name="RuleSet">Rule set.</param>
/// <param name="Fabricator">Workshop; the qualification counts only under the same technical and quality management.</param>
/// <param name="Materials">Designations that are covered: <c>6061-T6</c>, or alloys when any temper of the group is.</param>
/// <param name="AnyTemper">Whether any temper of those alloys is covered.</param>
/// <param name="Thickness">Thicknesses covered.</param>
/// <param name="OtherThickness">Thicknesses of the other side; null when both sides are alike.</param>
/// <param name="ToolDesignId">Tool design tested.</param>
/// <param name="ToolDesignLabel">Its number and revision.</param>
/// <param name="JointType">Joint type tested.</param>
/// <param name="Windows">Windows of the essential parameters.</param>
/// <param name="AsTested">All other essential variables.</param>
public sealed record QualificationRange(
    LimitReference RuleSet,
    string Fabricator,
    IReadOnlyList<string> Materials,
    bool AnyTemper,
    ThicknessRange Thickness,
    ThicknessRange? OtherThickness,
    Guid ToolDesignId,
    string ToolDesignLabel,
    string JointType,
    IReadOnlyList<QualifiedWindow> Windows,
    IReadOnlyList<TestedValue> AsTested
)
{
    /// <summary>Rounding of thicknesses: closer ones are the same.</summary>
    private const double ResolutionMillimetres = 0.001;

    /// <summary>Whether a parent material is covered.</summary>
    public bool CoversMaterial(string alloy, string temper) =>
        Materials.Contains(
            AnyTemper ? alloy : $"{alloy}-{temper}",
            StringComparer.OrdinalIgnoreCase
        );

    /// <summary>Whether a thickness is covered.</summary>
    public bool CoversThickness(Engineering.Quantities.Length thickness) =>
        Covers(Thickness, thickness);

    /// <summary>The value of a variable that stays as tested; null when the qualification says nothing about it.</summary>
    public string? Tested(string name) => AsTested.FirstOrDefault(t => t.Name == name)?.Text;

    internal static bool Covers(ThicknessRange range, Engineering.Quantities.Length thickness) =>
        thickness.Millimetres >= range.Thinnest.Millimetres - ResolutionMillimetres
        && thickness.Millimetres <= range.Thickest.Millimetres + ResolutionMillimetres;
}
