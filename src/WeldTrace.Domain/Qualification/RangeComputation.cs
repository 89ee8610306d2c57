using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;

namespace WeldTrace.Domain.Qualification;

/// <summary>Computes the range that a complete qualification covers.</summary>
public static class RangeComputation
{
    /// <summary>Lines of a procedure that the range treats by a rule of its own.</summary>
    private static readonly string[] Ruled =
    [
        "Parent material",
        "Parent material, other side",
        "Thickness",
        "Thickness, other side",
        "Joint type",
        "Tool design",
    ];

    /// <summary>The range of a procedure tested as it is written.</summary>
    /// <param name="content">Procedure of the test pieces.</param>
    /// <param name="severalPasses">Whether the joint is welded in several passes.</param>
    /// <param name="fabricator">Workshop.</param>
    /// <param name="ruleSet">Rule set.</param>
    /// <param name="groups">Material groups, for rule sets that widen to the group.</param>
    public static QualificationRange Compute(
        ProcedureContent content,
        bool severalPasses,
        string fabricator,
        LimitTable ruleSet,
        LimitTable groups
    )
    {
        ArgumentNullException.ThrowIfNull(content);
        ArgumentNullException.ThrowIfNull(ruleSet);
        var other = content.DetailsOrNone.Other;
        var (materials, anyTemper) = Materials(content, ruleSet, groups);
        return new QualificationRange(
            ruleSet.Reference,
            fabricator,
            materials,
            anyTemper,
            RangeRules.Thickness(ruleSet, content.Thickness, severalPasses).Value,
            other is null
                ? null
                : RangeRules.Thickness(ruleSet, other.Thickness, severalPasses).Value,
            content.ToolDesignId,
            content.ToolDesignLabel,
            content.JointType,
            [
                .. content
                    .Windows.Where(IsEssential)
                    .Select(w => new QualifiedWindow(
                        w.Parameter,
                        w.LowerSi,
                        w.UpperSi,
                        FormattableString.Invariant($"{w.Lower} to {w.Upper} {w.Unit}")
                    )),
            ],
            [.. AsTested(content).Select(l => new TestedValue(l.Name, l.Text))]
        );
    }

    /// <summary>Spindle and travel speed make the heat input, so they are essential whatever the procedure says.</summary>
    internal static bool IsEssential(ParameterWindow window) =>
        window.IsEssential
        || window.Parameter is WeldParameter.SpindleSpeed or WeldParameter.TravelSpeed;

    internal static IEnumerable<ProcedureLine> AsTested(ProcedureContent content) =>
        ProcedureLines
            .Of(content)
            .Where(l =>
                l.IsEssential && l.Group != ProcedureGroup.Parameters && !Ruled.Contains(l.Name)
            );

    private static (IReadOnlyList<string> Materials, bool AnyTemper) Materials(
        ProcedureContent content,
        LimitTable ruleSet,
        LimitTable groups
    )
    {
        var sides = new List<(string Alloy, string Temper)> { (content.Alloy, content.Temper) };
        if (content.DetailsOrNone.Other is { } other)
        {
            sides.Add((other.Alloy, other.Temper));
        }

        // An alloy that no group names can't be widened; then the whole joint stays as tested.
        var grouped = sides.Select(s => MaterialGroups.Alike(groups, s.Alloy)).ToList();
        return RangeRules.CoversGroup(ruleSet) && grouped.All(g => g.Count > 0)
            ? ([.. grouped.SelectMany(g => g).Distinct()], true)
            : ([.. sides.Select(s => $"{s.Alloy}-{s.Temper}").Distinct()], false);
    }
}
