using WeldTrace.Engineering;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Limits;

/// <summary>Thicknesses that a test piece qualifies.</summary>
/// <param name="Thinnest">Thinnest, included.</param>
/// <param name="Thickest">Thickest, included.</param>
public sealed record ThicknessRange(Length Thinnest, Length Thickest);

/// <summary>Reads a rule set for the range of qualification. What it doesn't name stays as tested.</summary>
public static class RangeRules
{
    private const string Title = "Thickness that the qualification covers";

    /// <summary>Whether the rule set widens the material to its group.</summary>
    public static bool CoversGroup(LimitTable ruleSet) =>
        LimitRow
            .Of(ruleSet, LimitKind.QualificationRange)
            .Any(r => r.Cells[0] == "alloy and temper" && r.Cells[1] == "material group");

    /// <summary>Thicknesses qualified by a tested one; the tested one alone where no row fits.</summary>
    /// <param name="ruleSet">Rule set.</param>
    /// <param name="tested">Thickness of the test piece, above zero.</param>
    /// <param name="severalPasses">Whether it was welded in several passes.</param>
    public static Computed<ThicknessRange> Thickness(
        LimitTable ruleSet,
        Length tested,
        bool severalPasses
    )
    {
        var row = LimitRow
            .Of(ruleSet, LimitKind.QualificationRange)
            .Where(r => FitsThickness(r, (decimal)tested.Millimetres, severalPasses))
            .Cast<LimitRow?>()
            .FirstOrDefault();
        return row is { } found ? ByRow(ruleSet, found, tested) : AsTested(ruleSet, tested);
    }

    private static bool FitsThickness(LimitRow row, decimal millimetres, bool severalPasses) =>
        row.Cells[0] == "thickness"
        && row.Cells[1] == "range"
        && row.Fits(2, severalPasses ? "several" : "one")
        && millimetres > (row.Number(3) ?? -1)
        && (row.Number(4) is not { } end || millimetres <= end);

    private static Computed<ThicknessRange> ByRow(LimitTable ruleSet, LimitRow row, Length tested)
    {
        var (lowestTimes, lowestFixed) = ((double?)row.Number(5), (double?)row.Number(6));
        var (highestTimes, atMost) = ((double?)row.Number(7), (double?)row.Number(8));
        var range = new ThicknessRange(
            lowestTimes is { } times ? tested * times
                : lowestFixed is { } least ? Length.FromMillimetres(least)
                : tested,
            Capped(tested * (highestTimes ?? 1), atMost)
        );
        var lowest =
            lowestTimes is not null ? "t_min = a·t"
            : lowestFixed is not null ? "t_min = c"
            : "t_min = t";
        var highest = highestTimes is null ? "t" : "b·t";
        return Show(
            ruleSet,
            range,
            Working
                .Of(Title, $"{lowest}; t_max = {(atMost is null ? highest : $"min({highest}, m)")}")
                .Input("t", "thickness tested", tested.Millimetres, "mm")
                .OptionalInput("a", "lowest, times tested", lowestTimes)
                .OptionalInput("c", "lowest", lowestTimes is null ? lowestFixed : null, "mm")
                .OptionalInput("b", "highest, times tested", highestTimes)
                .OptionalInput("m", "at most", atMost, "mm"),
            Scope(row)
        );
    }

    private static Computed<ThicknessRange> AsTested(LimitTable ruleSet, Length tested) =>
        Show(
            ruleSet,
            new ThicknessRange(tested, tested),
            Working
                .Of(Title, "t_min = t; t_max = t")
                .Input("t", "thickness tested", tested.Millimetres, "mm"),
            "The rule set names no range for this thickness, so it stays as tested."
        );

    private static Computed<ThicknessRange> Show(
        LimitTable ruleSet,
        ThicknessRange range,
        WorkingBuilder working,
        string scope
    ) =>
        Computed.Of(
            range,
            working
                .Result("t_min", "thinnest covered", range.Thinnest.Millimetres, "mm")
                .Result("t_max", "thickest covered", range.Thickest.Millimetres, "mm")
                .From(ruleSet.Reference.InWords)
                .Validity(Validity.Within(scope))
                .Build()
        );

    private static string Scope(LimitRow row)
    {
        var passes =
            row.Cells[2] == LimitSchema.Any
                ? "any number of passes"
                : $"{row.Cells[2]} pass{(row.Cells[2] == "one" ? "" : "es")}";
        var above = row.Number(3) is { } from
            ? FormattableString.Invariant($" above {from} mm")
            : "";
        var upTo = row.Number(4) is { } to ? FormattableString.Invariant($" up to {to} mm") : "";
        return above.Length + upTo.Length == 0
            ? $"The rule is for any thickness tested, welded in {passes}."
            : $"The rule is for thicknesses tested{above}{upTo}, welded in {passes}.";
    }

    private static Length Capped(Length length, double? most) =>
        most is { } m && length.Millimetres > m ? Length.FromMillimetres(m) : length;
}
