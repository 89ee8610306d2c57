using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;
using Written = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Limits;

/// <summary>The limit that an imperfection was judged by.</summary>
/// <param name="AtMost">Greatest permitted size; 0 when none is permitted.</param>
/// <param name="Formula">How it follows from the thickness, or that the design gives it.</param>
/// <param name="Source">Table or design specification.</param>
public sealed record AppliedLimit(Written AtMost, string Formula, string Source);

/// <summary>Judges imperfections, of qualification specimens and of sections alike.</summary>
public static class ImperfectionJudgement
{
    /// <summary>The limit for an imperfection: that of the table, else that of the design; null when neither has one.</summary>
    /// <param name="table">Table of imperfection limits.</param>
    /// <param name="imperfection">Imperfection as the table names it.</param>
    /// <param name="thickness">Thickness of the joint.</param>
    /// <param name="design">Greatest size of the design specification; used where the table has none.</param>
    /// <param name="document">The design specification; null when it isn't named.</param>
    public static AppliedLimit? LimitFor(
        LimitTable table,
        string imperfection,
        Length thickness,
        Written? design,
        string? document
    )
    {
        ArgumentNullException.ThrowIfNull(table);
        return ImperfectionLimits.Find(table, imperfection, thickness) is { } found
                ? new AppliedLimit(
                    new Written(Digits(found.Millimetres), "mm"),
                    found.Formula,
                    $"{table.Label}: {table.Text.Source}"
                )
            : design is not null
                ? new AppliedLimit(
                    design,
                    "limit of the design",
                    document ?? "design specification"
                )
            : null;
    }

    /// <summary>The verdict with its sentence. Where none is permitted, whatever is there fails, whatever its size.</summary>
    /// <param name="size">Measured size; null when only the presence was seen.</param>
    /// <param name="expandedUncertainty">Expanded uncertainty of the size, k = 2; null when it isn't known.</param>
    /// <param name="limit">Limit in the unit of the size.</param>
    public static (Verdict Verdict, string Sentence) Judge(
        Written? size,
        Written? expandedUncertainty,
        AppliedLimit limit
    )
    {
        ArgumentNullException.ThrowIfNull(limit);
        if (size is null || (limit.AtMost.InUnit() == 0 && size.InUnit() > 0))
        {
            return (
                Verdict.Fail,
                size is null ? "is there; none is permitted." : $"of {size}; none is permitted."
            );
        }

        var judged = Comparison.AtMost(
            new Engineering.Conformity.Measured(
                size.InUnit(),
                size.Unit,
                expandedUncertainty?.InUnit()
            ),
            WrittenLimit.Parse(limit.AtMost.Digits, limit.AtMost.Unit)
        );
        return (judged.Verdict, judged.Sentence);
    }

    private static string Digits(decimal value) =>
        value.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
