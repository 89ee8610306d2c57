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
    public static decimal? Of(LimitTable table, string imperfection, Length thickness) =>
        Find(table, imperfection, thickness)?.Millimetres;

    /// <summary>The greatest permitted size with its formula; null when the table doesn't limit it.</summary>
    /// <param name="table">Table of imperfection limits.</param>
    /// <param name="imperfection">Imperfection as the table names it.</param>
    /// <param name="thickness">Thickness of the joint.</param>
    public static ImperfectionLimit? Find(LimitTable table, string imperfection, Length thickness)
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

        var (fixedPart, times) = (found.Number(3) ?? 0, found.Number(4) ?? 0);
        var size = fixedPart + (times * (decimal)thickness.Millimetres);
        var isCapped = found.Number(5) is { } most && size > most;
        return new ImperfectionLimit(
            isCapped ? found.Number(5)!.Value : size,
            Formula(fixedPart, times, found.Number(5), thickness)
        );
    }

    private static string Formula(decimal fixedPart, decimal times, decimal? most, Length thickness)
    {
        if (times == 0)
        {
            return fixedPart == 0 ? "none permitted"
                : most is null ? FormattableString.Invariant($"{fixedPart} mm")
                : FormattableString.Invariant($"{fixedPart} mm, at most {most} mm");
        }

        var part = fixedPart == 0 ? "" : FormattableString.Invariant($"{fixedPart} mm + ");
        var cap = most is null ? "" : FormattableString.Invariant($", at most {most} mm");
        return FormattableString.Invariant(
            $"{part}{times}·t{cap}, t = {thickness.Millimetres:0.###} mm"
        );
    }
}

/// <summary>Greatest permitted size of an imperfection.</summary>
/// <param name="Millimetres">The size in mm; 0 when none is permitted.</param>
/// <param name="Formula">How it follows from the thickness t.</param>
public sealed record ImperfectionLimit(decimal Millimetres, string Formula);
