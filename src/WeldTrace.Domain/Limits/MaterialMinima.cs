using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Limits;

/// <summary>Minima of a product standard for a material.</summary>
/// <param name="TensileStrength">Least Rm in MPa; null when it gives none.</param>
/// <param name="ProofStrength">Least Rp0.2 in MPa; null when it gives none.</param>
/// <param name="Elongation">Least A in %; null when it gives none.</param>
public sealed record MaterialMinimum(
    string? TensileStrength,
    string? ProofStrength,
    string? Elongation
);

/// <summary>Tables of minima of product standards; the digits as written say to which place a value is rounded.</summary>
public static class MaterialMinima
{
    /// <summary>The minima for a material; null when the table has no row for it.</summary>
    /// <param name="table">Table of material minima.</param>
    /// <param name="alloy">Alloy.</param>
    /// <param name="temper">Temper.</param>
    /// <param name="form">Product form.</param>
    /// <param name="thickness">Thickness; null when it isn't known, then only rows for every thickness fit.</param>
    public static MaterialMinimum? Find(
        LimitTable table,
        string alloy,
        string temper,
        string form,
        Length? thickness
    ) =>
        LimitRow
            .Of(table, LimitKind.MaterialMinima)
            .Where(r =>
                r.Fits(0, alloy.Trim())
                && r.Fits(1, temper.Trim())
                && r.Fits(2, form.Trim())
                && (
                    thickness is { } known
                        ? r.FitsThickness(3, 4, known)
                        : r.Number(3) is null && r.Number(4) is null
                )
            )
            .Select(r => new MaterialMinimum(Digits(r, 5), Digits(r, 6), Digits(r, 7)))
            .FirstOrDefault();

    private static string? Digits(LimitRow row, int column) =>
        row.Cells[column].Length == 0 ? null : row.Cells[column];
}
