using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;
using WeldTrace.Engineering;

namespace WeldTrace.Domain.Qualification;

/// <summary>How the figures of a qualification's plan and range follow, each with the rule that stands behind it.</summary>
public static class QualificationWorking
{
    /// <summary>Key of the range of thickness.</summary>
    public const string Thickness = "thickness";

    /// <summary>Key of the range of thickness of the other side.</summary>
    public const string OtherThickness = "other-thickness";

    private const string BothEnds =
        "test pieces at the lowest and highest heat input of the windows, NASA-STD-5006A w/Change 2 GWR 55";

    /// <summary>The working of each computed limit of the range, by the key of its line; empty before there is a range.</summary>
    /// <param name="record">Qualification.</param>
    /// <param name="content">Procedure of its test pieces.</param>
    /// <param name="ruleSet">Edition of the rule set that the range was computed by.</param>
    public static IEnumerable<(string Key, Working Working)> OfRange(
        QualificationRecord record,
        ProcedureContent content,
        LimitTable ruleSet
    )
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(content);
        if (record.Range is not { } range)
        {
            yield break;
        }

        yield return (
            Thickness,
            RangeRules.Thickness(ruleSet, content.Thickness, record.SeveralPasses).Working
        );
        if (content.DetailsOrNone.Other is { } other)
        {
            yield return (
                OtherThickness,
                RangeRules.Thickness(ruleSet, other.Thickness, record.SeveralPasses).Working
            );
        }

        foreach (var qualified in range.Windows)
        {
            if (content.WindowOf(qualified.Parameter) is { } window)
            {
                yield return (
                    qualified.Parameter.ToString(),
                    Window(window, record.Plan.Pieces, range.RuleSet)
                );
            }
        }
    }

    /// <summary>How the least tensile strength follows; null when the design specification gives it.</summary>
    public static Working? Of(QualificationPlan plan, TensileRequirement required)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(required);
        return required is { Factor: { } factor, ParentMinimum: { } parent }
            ? Working
                .Of("Least tensile strength of a specimen", "R_w = f·R_m")
                .Input("f", "factor of the table", (double)factor)
                .Input("R_m", "minimum of the parent", (double)parent, "MPa")
                .Result("R_w", "least tensile strength", (double)required.Megapascals, "MPa")
                .From(SourceOf(plan, required.Derivation))
                .Validity(Validity.Within($"{required.Derivation}."))
                .Build()
            : null;
    }

    /// <summary>How the largest bend former follows; null when the design specification gives it.</summary>
    public static Working? Of(
        QualificationPlan plan,
        FormerRequirement former,
        ProcedureContent content
    )
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(former);
        ArgumentNullException.ThrowIfNull(content);
        if (former.TimesThickness is null && former.ElongationPercent is null)
        {
            return null;
        }

        return Working
            .Of(
                "Largest bend former",
                former.TimesThickness is null ? "d = 100·t/A − t" : "d = k·t"
            )
            .Input("t", "thickness of the specimen", content.Thickness.Millimetres, "mm")
            .OptionalInput("k", "multiple of the table", (double?)former.TimesThickness)
            .OptionalInput(
                "A",
                "least elongation of the parent",
                (double?)former.ElongationPercent,
                "%"
            )
            .Result("d", "largest diameter of the former", (double)former.Millimetres, "mm")
            .From(SourceOf(plan, former.Derivation))
            .Build();
    }

    private static Working Window(
        ParameterWindow window,
        IReadOnlyList<PlannedPiece> pieces,
        LimitReference ruleSet
    )
    {
        var working = Working
            .Of(
                $"Qualified window of the {ParameterNames.Of(window.Parameter).ToLowerInvariant()}",
                "x_min = x_l; x_max = x_u"
            )
            .Input("x_l", "lower limit of the procedure tested", (double)window.Lower, window.Unit)
            .Input("x_u", "upper limit of the procedure tested", (double)window.Upper, window.Unit);
        foreach (var piece in pieces)
        {
            foreach (var set in piece.Settings.Where(s => s.Parameter == window.Parameter))
            {
                working.Step(
                    $"x_{piece.Mark}",
                    $"set on piece {piece.Mark}, {PlanWords.Of(piece.Heat)}",
                    (double)set.Value,
                    set.Unit
                );
            }
        }

        return working
            .Result("x_min", "least covered", (double)window.Lower, window.Unit)
            .Result("x_max", "greatest covered", (double)window.Upper, window.Unit)
            .From($"{ruleSet.InWords}; {BothEnds}")
            .Build();
    }

    // The derivation ends with the label of the table; the plan knows the table's source.
    private static string SourceOf(QualificationPlan plan, string derivation) =>
        plan.Tables.FirstOrDefault(t => derivation.Contains(t.Label, StringComparison.Ordinal))
            is { } table
            ? table.InWords
            : derivation;
}
