using WeldTrace.Domain.Procedures;

namespace WeldTrace.Domain.Limits;

/// <summary>What a tensile table asks of a joint.</summary>
/// <param name="Factor">Factor.</param>
/// <param name="BaseTemper">Temper whose minimum the factor is taken of: <c>actual</c>, <c>O</c> or <c>T6</c>.</param>
public sealed record TensileFactor(decimal Factor, string BaseTemper);

/// <summary>Tensile acceptance: Rm(w) ≥ factor × minimum of the parent in a base temper (form of EN 14532-3:2004, 6.2.4.1).</summary>
public static class TensileFactors
{
    /// <summary>
    /// The factor for a parent material; null when the table has none, so that the design specification must give the value.
    /// </summary>
    /// <param name="table">Table of tensile factors.</param>
    /// <param name="group">Material group; null when the alloy has none.</param>
    /// <param name="temper">Temper before welding.</param>
    /// <param name="condition">Condition after welding.</param>
    public static TensileFactor? Find(
        LimitTable table,
        string? group,
        string temper,
        PostWeldCondition condition
    )
    {
        var row = LimitRow
            .Of(table, LimitKind.TensileFactors)
            .Where(r =>
                group is not null
                && r.FitsGroup(0, group)
                && r.Fits(1, temper)
                && r.Fits(2, DetailWords.Of(condition))
            )
            .Cast<LimitRow?>()
            .FirstOrDefault();
        return row is { } found ? new TensileFactor(found.Number(3) ?? 0, found.Cells[4]) : null;
    }
}
