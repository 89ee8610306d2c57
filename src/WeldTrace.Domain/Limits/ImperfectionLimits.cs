using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Limits;

/// <summary>Greatest permitted sizes of imperfections: fixed part + part of the thickness, capped.</summary>
public static class ImperfectionLimits
{
    /// <summary>Imperfections that a table limits, in its order.</summary>
    public static IReadOnlyList<string> Named(LimitTable table) =>
        [.. LimitRow.Of(table, LimitKind.Imperfections).Select(r => r.Cells[0]).Distinct()];

    /// <summary>Greatest permitted size in mm; 0 when none is permitted; null when the table doesn't limit it.</summary>
    /// <param name="table">Table of imperfection limits.</param>
    /// <param name="imperfection">Imperfection as the table names it.</param>
    /// <param name="thickness">Thickness of the joint.</param>
    public static decimal? Of(LimitTable table, string imperfection, Length thickness)
    {
        var row = LimitRow
            .Of(table, LimitKind.Imperfections)
            .Where(r =>
                r.Cells[0].Equals(imperfection, StringComparison.OrdinalIgnoreCase)
                && r.FitsThickness(1, 2, thickness)
            )
            .Cast<LimitRow?>()
            .FirstOrDefault();
        if (row is not { } found)
        {
            return null;
        }

        var size =
            (found.Number(3) ?? 0) + ((found.Number(4) ?? 0) * (decimal)thickness.Millimetres);
        return found.Number(5) is { } most && size > most ? most : size;
    }
}
