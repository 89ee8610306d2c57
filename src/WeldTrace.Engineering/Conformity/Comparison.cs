namespace WeldTrace.Engineering.Conformity;

/// <summary>
/// The one comparison that decides whether a value meets a limit.
/// <para>
/// Rounding: the value is rounded to the decimals with which the limit is written, then compared; a value exactly half-way
/// goes to the even digit (ISO 80000-1:2009, annex B, rule A; from memory). Before that a computed value is taken to 15
/// significant digits, so that the last bits of a binary number never decide. A limit of <c>0.5</c> is met by 0.54, one of
/// <c>0.50</c> is not.
/// </para>
/// <para>
/// Uncertainty: both ends of the interval value ± expanded uncertainty are rounded and compared by the same rule. Both ends
/// meet the limit: pass. Neither end does, on the same side: fail. Otherwise: undecided. A wider interval can turn a pass
/// or a fail into undecided, never anything into a pass (guarded acceptance in the manner of ISO 14253-1; from memory).
/// </para>
/// </summary>
public static class Comparison
{
    private const string Source =
        "Rounding: ISO 80000-1:2009 annex B, rule A (from memory). Uncertainty: guarded acceptance and rejection, common practice.";

    /// <summary>Whether the value is at most the limit.</summary>
    /// <exception cref="ArgumentException">The units are of different kinds.</exception>
    public static Judgement AtMost(Measured measured, WrittenLimit limit) =>
        Judge(measured, null, limit);

    /// <summary>Whether the value is at least the limit.</summary>
    /// <exception cref="ArgumentException">The units are of different kinds.</exception>
    public static Judgement AtLeast(Measured measured, WrittenLimit limit) =>
        Judge(measured, limit, null);

    /// <summary>Whether the value lies from the lower to the upper limit, both included.</summary>
    /// <exception cref="ArgumentException">The units are of different kinds, or the limits are the wrong way round.</exception>
    public static Judgement Within(Measured measured, WrittenLimit lower, WrittenLimit upper)
    {
        ArgumentNullException.ThrowIfNull(lower);
        ArgumentNullException.ThrowIfNull(upper);
        if (lower.Unit != upper.Unit || lower.Value > upper.Value)
        {
            throw new ArgumentException(
                "The limits need one unit, the lower one first.",
                nameof(upper)
            );
        }

        return Judge(measured, lower, upper);
    }

    private static Judgement Judge(Measured measured, WrittenLimit? lower, WrittenLimit? upper)
    {
        ArgumentNullException.ThrowIfNull(measured);
        var limit = lower ?? upper ?? throw new ArgumentNullException(nameof(upper));
        var value = measured.In(limit.Unit);
        var width = value.ExpandedUncertainty ?? 0;
        var (low, high) = (value.Value - width, value.Value + width);

        var verdict =
            Meets(low, lower, upper) && Meets(high, lower, upper) ? Verdict.Pass
            : IsBelow(high, lower) || IsAbove(low, upper) ? Verdict.Fail
            : Verdict.Undecided;
        var sentence = Sentence(verdict, value, lower, upper);
        return new(
            verdict,
            value,
            limit.Round(value.Value),
            lower,
            upper,
            sentence,
            Show(value, low, high, lower, upper)
        );
    }

    private static bool Meets(double value, WrittenLimit? lower, WrittenLimit? upper) =>
        !IsBelow(value, lower) && !IsAbove(value, upper);

    private static bool IsBelow(double value, WrittenLimit? lower) =>
        lower is not null && lower.Round(value) < lower.Value;

    private static bool IsAbove(double value, WrittenLimit? upper) =>
        upper is not null && upper.Round(value) > upper.Value;

    private static string Sentence(
        Verdict verdict,
        Measured value,
        WrittenLimit? lower,
        WrittenLimit? upper
    )
    {
        var range = (lower, upper) switch
        {
            (not null, not null) => $"from {lower} to {upper}",
            (not null, null) => $"at least {lower}",
            _ => $"at most {upper}",
        };
        return verdict switch
        {
            Verdict.Pass => $"{value} meets the limit, {range}.",
            Verdict.Fail => $"{value} does not meet the limit, {range}.",
            Verdict.Undecided =>
                $"{value} cannot be decided against the limit, {range}: the uncertainty straddles it.",
            _ => throw new ArgumentOutOfRangeException(nameof(verdict)),
        };
    }

    private static Working Show(
        Measured value,
        double low,
        double high,
        WrittenLimit? lower,
        WrittenLimit? upper
    )
    {
        var limit = (lower ?? upper)!;
        return Working
            .Of(
                "Comparison with a limit",
                "round(x ± U) compared with the limit, to its written decimals"
            )
            .Input("x", "value", value.Value, value.Unit)
            .OptionalInput("U", "expanded uncertainty", value.ExpandedUncertainty, value.Unit)
            .OptionalInput("lower", "lower limit", lower?.Value, value.Unit)
            .OptionalInput("upper", "upper limit", upper?.Value, value.Unit)
            .Step("", "lower end, rounded", limit.Round(low), value.Unit)
            .Step("", "upper end, rounded", limit.Round(high), value.Unit)
            .Result("", "value, rounded", limit.Round(value.Value), value.Unit)
            .From(Source)
            .Build();
    }
}
