using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;

namespace WeldTrace.Domain.Qualification;

/// <summary>One line of the table that says what a qualification covers.</summary>
/// <param name="Variable">Variable.</param>
/// <param name="Covered">What is covered.</param>
/// <param name="Rule">By which rule.</param>
/// <param name="Key">Name of the working in <see cref="QualificationWorking.OfRange"/>; null when nothing is computed.</param>
public sealed record RangeLine(string Variable, string Covered, string Rule, string? Key = null);

/// <summary>The range of a qualification in words and as a table.</summary>
public static class RangeWords
{
    private const string AsTested = "as tested";

    /// <summary>The range in one sentence.</summary>
    public static string Sentence(QualificationRange range)
    {
        ArgumentNullException.ThrowIfNull(range);
        return $"Covers {range.JointType} joints in {Materials(range)}, {Of(range.Thickness)} thick, welded with {range.ToolDesignLabel} by {range.Fabricator}, inside the windows below; by {range.RuleSet.Label} ({range.RuleSet.Source}){(range.RuleSet.WasChecked ? "" : ", not checked against an own copy")}.";
    }

    /// <summary>The range as a table.</summary>
    public static IReadOnlyList<RangeLine> Table(QualificationRange range)
    {
        ArgumentNullException.ThrowIfNull(range);
        return
        [
            new(
                "Fabricator",
                range.Fabricator,
                "workshops under the same technical and quality management"
            ),
            new("Parent material", Materials(range), range.AnyTemper ? "material group" : AsTested),
            Line("Thickness", range.Thickness, QualificationWorking.Thickness),
            .. range.OtherThickness is { } other
                ? [Line("Thickness, other side", other, QualificationWorking.OtherThickness)]
                : Empty,
            new("Joint type", range.JointType, AsTested),
            new("Tool design", range.ToolDesignLabel, AsTested),
            .. range.Windows.Select(w => new RangeLine(
                ParameterNames.Of(w.Parameter),
                w.Words,
                "window as tested at both ends of the heat input",
                w.Parameter.ToString()
            )),
            .. range.AsTested.Select(t => new RangeLine(t.Name, t.Text, AsTested)),
        ];
    }

    /// <summary>The materials in words.</summary>
    public static string Materials(QualificationRange range)
    {
        ArgumentNullException.ThrowIfNull(range);
        return string.Join(", ", range.Materials) + (range.AnyTemper ? " in any temper" : "");
    }

    /// <summary>A range of thickness in words.</summary>
    public static string Of(ThicknessRange range)
    {
        ArgumentNullException.ThrowIfNull(range);
        return range.Thinnest == range.Thickest
            ? FormattableString.Invariant($"{range.Thinnest.Millimetres:0.###} mm")
            : FormattableString.Invariant(
                $"{range.Thinnest.Millimetres:0.###} to {range.Thickest.Millimetres:0.###} mm"
            );
    }

    private static IReadOnlyList<RangeLine> Empty => [];

    private static RangeLine Line(string name, ThicknessRange range, string key) =>
        new(
            name,
            Of(range),
            range.Thinnest == range.Thickest ? AsTested : "range of the rule set",
            key
        );
}
