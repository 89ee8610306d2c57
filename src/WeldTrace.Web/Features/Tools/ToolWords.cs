using System.Globalization;
using WeldTrace.Domain.Tooling;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Features.Tools;

/// <summary>Words about tools, the same on screen and paper.</summary>
public static class ToolWords
{
    public static string Of(RetirementReason reason) =>
        reason switch
        {
            RetirementReason.Limit => "life limit",
            RetirementReason.Wear => "wear",
            RetirementReason.Breakage => "breakage",
            RetirementReason.Other => "other",
            _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, null),
        };

    /// <summary>How often something still fits into the life, and the chance of surviving it.</summary>
    public static string Of(NextWeld next)
    {
        ArgumentNullException.ThrowIfNull(next);
        var count = next.Usage.PassesLeft;
        var unit = (next.IsVessel, count) switch
        {
            (true, 1) => "vessel",
            (true, _) => "vessels",
            (false, 1) => "pass",
            _ => "passes",
        };
        var survival = next is { Survival: { } chance, SurvivalBound: { } bound }
            ? $"; survives it with {Percent(chance)} (95 % lower bound {Percent(bound)})"
            : "";
        return FormattableString.Invariant(
            $"{count} {unit} left, {next.Usage.NextPass.Metres:0.000} m each{survival}"
        );
    }

    public static string Interval(ToolUpkeep upkeep, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(upkeep);
        string[] parts =
        [
            upkeep.InspectEvery is { } every
                ? $"every {UnitText.Nominal(every, units, UnitScale.Path)}"
                : "",
            upkeep.InspectEveryDays is { } days
                ? FormattableString.Invariant($"every {days} days")
                : "",
        ];
        return string.Join(" or ", parts.Where(p => p.Length > 0));
    }

    /// <summary>A probability in per cent; near certainty is not written as certainty.</summary>
    public static string Percent(double part) =>
        part > 0.9995
            ? "> 99.9 %"
            : (part * 100).ToString("0.0", CultureInfo.InvariantCulture) + " %";
}
