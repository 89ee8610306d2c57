using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Limits;

/// <summary>Thicknesses that a test piece qualifies.</summary>
/// <param name="Thinnest">Thinnest, included.</param>
/// <param name="Thickest">Thickest, included.</param>
public sealed record ThicknessRange(Length Thinnest, Length Thickest);

/// <summary>Reads a rule set for the range of qualification. What it doesn't name stays as tested.</summary>
public static class RangeRules
{
    /// <summary>Whether the rule set widens the material to its group.</summary>
    public static bool CoversGroup(LimitTable ruleSet) =>
        LimitRow
            .Of(ruleSet, LimitKind.QualificationRange)
            .Any(r => r.Cells[0] == "alloy and temper" && r.Cells[1] == "material group");

    /// <summary>Thicknesses qualified by a tested one; the tested one alone where no row fits.</summary>
    /// <param name="ruleSet">Rule set.</param>
    /// <param name="tested">Thickness of the test piece, above zero.</param>
    /// <param name="severalPasses">Whether it was welded in several passes.</param>
    public static ThicknessRange Thickness(LimitTable ruleSet, Length tested, bool severalPasses)
    {
        var millimetres = (decimal)tested.Millimetres;
        var row = LimitRow
            .Of(ruleSet, LimitKind.QualificationRange)
            .Where(r =>
                r.Cells[0] == "thickness"
                && r.Cells[1] == "range"
                && r.Fits(2, severalPasses ? "several" : "one")
                && millimetres > (r.Number(3) ?? -1)
                && (r.Number(4) is not { } end || millimetres <= end)
            )
            .Cast<LimitRow?>()
            .FirstOrDefault();
        return row is { } found
            ? new ThicknessRange(
                Of(found.Number(5), found.Number(6)),
                Capped(Of(found.Number(7), null), found.Number(8))
            )
            : new ThicknessRange(tested, tested);

        Length Of(decimal? times, decimal? fixedPart) =>
            times is { } t ? tested * (double)t
            : fixedPart is { } f ? Length.FromMillimetres((double)f)
            : tested;

        static Length Capped(Length length, decimal? most) =>
            most is { } m && length.Millimetres > (double)m
                ? Length.FromMillimetres((double)m)
                : length;
    }
}
