namespace WeldTrace.Domain.Limits;

/// <summary>Largest former of a bend test.</summary>
/// <param name="TimesThickness">Diameter in multiples of the specimen's thickness; null when it follows from the elongation.</param>
public sealed record BendFormer(decimal? TimesThickness)
{
    private const double LeastElongationPercent = 5;

    /// <summary>Largest diameter in mm; null when it needs an elongation that is missing or not above 5 %.</summary>
    /// <param name="thicknessMillimetres">Thickness of the specimen, above zero.</param>
    /// <param name="elongationPercent">Least elongation of the parent, in %.</param>
    public double? Diameter(double thicknessMillimetres, double? elongationPercent)
    {
        if (TimesThickness is { } times)
        {
            return (double)times * thicknessMillimetres;
        }

        // d = 100·t/A − t for A > 5 % (ISO 25239-4 and ISO 15614-2, from memory).
        return elongationPercent > LeastElongationPercent
            ? (100 * thicknessMillimetres / elongationPercent.Value) - thicknessMillimetres
            : null;
    }
}

/// <summary>Formers of the bend test.</summary>
public static class BendFormers
{
    /// <summary>The former for a parent material; null when the table has none.</summary>
    /// <param name="table">Table of bend formers.</param>
    /// <param name="group">Material group; null when the alloy has none.</param>
    /// <param name="temper">Temper.</param>
    public static BendFormer? Find(LimitTable table, string? group, string temper) =>
        LimitRow
            .Of(table, LimitKind.BendFormers)
            .Where(r => r.FitsGroup(0, group) && r.Fits(1, temper))
            .Select(r => new BendFormer(r.Cells[3] == "yes" ? null : r.Number(2)))
            .FirstOrDefault();
}
