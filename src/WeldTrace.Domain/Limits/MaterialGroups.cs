namespace WeldTrace.Domain.Limits;

/// <summary>Groups of alloys (ISO/TR 15608).</summary>
public static class MaterialGroups
{
    /// <summary>The group of an alloy; null when the table doesn't name it, as for 2xxx, Al-Li and most 7xxx.</summary>
    /// <param name="table">Table of material groups.</param>
    /// <param name="alloy">Alloy, for instance <c>6061</c>.</param>
    public static string? Of(LimitTable table, string alloy) =>
        LimitRow
            .Of(table, LimitKind.MaterialGroups)
            .Where(r => r.Fits(0, alloy.Trim()))
            .Select(r => r.Cells[1])
            .FirstOrDefault();
}
