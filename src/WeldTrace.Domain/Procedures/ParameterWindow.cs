using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Procedures;

/// <summary>Set point, lower and upper limit of one parameter, with the digits that were written down.</summary>
/// <param name="Parameter">Which parameter.</param>
/// <param name="SetPoint">Value to set, in <paramref name="Unit"/>; lower ≤ set point ≤ upper.</param>
/// <param name="Lower">Least permitted value, in <paramref name="Unit"/>.</param>
/// <param name="Upper">Greatest permitted value, in <paramref name="Unit"/>.</param>
/// <param name="Unit">One of <see cref="ParameterUnits.For"/>.</param>
/// <param name="IsEssential">Whether a change beyond the window asks for requalification.</param>
public sealed record ParameterWindow(
    WeldParameter Parameter,
    decimal SetPoint,
    decimal Lower,
    decimal Upper,
    string Unit,
    bool IsEssential
)
{
    /// <summary>Longest <see cref="ControlledBy"/>.</summary>
    public const int LongestControl = 60;

    /// <summary>What keeps the parameter in its window, for instance <c>controller, closed loop</c>; null when it isn't said.</summary>
    public string? ControlledBy { get; init; }

    /// <summary>Value below which is warned, in <see cref="Unit"/>; null: nothing is warned of before the lower limit.</summary>
    public decimal? WarningLower { get; init; }

    /// <summary>Value above which is warned, in <see cref="Unit"/>; null: nothing is warned of before the upper limit.</summary>
    public decimal? WarningUpper { get; init; }

    /// <summary>Limits in phases other than the traverse; null when there are none.</summary>
    public IReadOnlyList<PhaseLimits>? OtherPhases { get; init; }

    /// <summary>Set point in the coherent SI unit.</summary>
    public double SetPointSi => ParameterUnits.ToSi(Parameter, SetPoint, Unit);

    /// <summary>Lower limit in the coherent SI unit.</summary>
    public double LowerSi => ParameterUnits.ToSi(Parameter, Lower, Unit);

    /// <summary>Upper limit in the coherent SI unit.</summary>
    public double UpperSi => ParameterUnits.ToSi(Parameter, Upper, Unit);

    /// <summary>The limit that a value passes, else the warning; null when it passes neither. A value on a limit is within.</summary>
    /// <param name="valueSi">Value in the coherent SI unit of the parameter.</param>
    public PassedLimit? PassedBy(double valueSi) =>
        valueSi > UpperSi ? new(true, false)
        : valueSi < LowerSi ? new(false, false)
        : valueSi > WarningSi(WarningUpper) ? new(true, true)
        : valueSi < WarningSi(WarningLower) ? new(false, true)
        : null;

    private double? WarningSi(decimal? warning) =>
        warning is { } given ? ParameterUnits.ToSi(Parameter, given, Unit) : null;

    /// <summary>What is wrong with the window, naming the field.</summary>
    public IEnumerable<Refusal> Check()
    {
        if (!ParameterUnits.Allows(Parameter, Unit))
        {
            yield return Wrong(
                nameof(Unit),
                $"has no unit '{Unit}'; choose {string.Join(" or ", ParameterUnits.For(Parameter))}"
            );
            yield break;
        }

        if (Lower > Upper)
        {
            yield return Wrong(
                nameof(Lower),
                $"has a lower limit ({Lower} {Unit}) above its upper limit ({Upper} {Unit}); swap them"
            );
        }
        else if (SetPoint < Lower || SetPoint > Upper)
        {
            yield return Wrong(
                nameof(SetPoint),
                $"has its set point ({SetPoint} {Unit}) outside {Lower} to {Upper} {Unit}; move one of them"
            );
        }

        foreach (var wrong in CheckWithin())
        {
            yield return wrong;
        }

        if (ControlledBy?.Length > LongestControl)
        {
            yield return Wrong(
                nameof(ControlledBy),
                $"has a source of control longer than {LongestControl} characters; shorten it"
            );
        }

        if (!IsSigned && Lower < 0)
        {
            yield return Wrong(nameof(Lower), "has a lower limit below zero; give zero or more");
        }

        if (Parameter is WeldParameter.SpindleSpeed or WeldParameter.TravelSpeed && SetPoint <= 0)
        {
            yield return Wrong(
                nameof(SetPoint),
                "has a set point of zero or less; give a value above zero"
            );
        }
    }

    private IEnumerable<Refusal> CheckWithin()
    {
        if (WarningLower < Lower || WarningUpper > Upper || WarningLower > WarningUpper)
        {
            yield return Wrong(
                nameof(WarningLower),
                $"warns outside its limits, or below above; keep both warnings within {Lower} to {Upper} {Unit}"
            );
        }

        if (OtherPhases?.Any(p => p.Lower > p.Upper) == true)
        {
            yield return Wrong(
                nameof(OtherPhases),
                "has a phase with its lower limit above the upper one; swap them"
            );
        }
    }

    private bool IsSigned =>
        Parameter
            is WeldParameter.TiltAngle
                or WeldParameter.ToolTemperature
                or WeldParameter.SideTiltAngle
                or WeldParameter.LateralOffset;

    private Refusal Wrong(string field, string what) =>
        new("window", $"{ParameterNames.Of(Parameter)} {what}.", $"{Parameter}.{field}");
}

/// <summary>What a value passed.</summary>
/// <param name="IsAbove">Whether it lies above; otherwise below.</param>
/// <param name="IsWarning">Whether only a warning was passed and no limit.</param>
public readonly record struct PassedLimit(bool IsAbove, bool IsWarning);
