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

    /// <summary>All alloys of the alloy's group, itself included; empty when the table doesn't name it.</summary>
    /// <param name="table">Table of material groups.</param>
    /// <param name="alloy">Alloy.</param>
    public static IReadOnlyList<string> Alike(LimitTable table, string alloy) =>
        Of(table, alloy) is { } group
            ?
            [
                .. LimitRow
                    .Of(table, LimitKind.MaterialGroups)
                    .Where(r => r.Cells[1] == group)
                    .SelectMany(r =>
                        r.Cells[0]
                            .Split(
                                ',',
                                StringSplitOptions.TrimEntries
                                    | StringSplitOptions.RemoveEmptyEntries
                            )
                    ),
            ]
            : [];
}
