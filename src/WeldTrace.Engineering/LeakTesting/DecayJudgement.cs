using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Engineering.LeakTesting;

internal static class DecayJudgement
{
    private const string Unit = "Pa·m³/s";

    /// <summary>
    /// A negative rate is an error of at least its size. A pass also needs a test that would have seen a leak of the limit.
    /// </summary>
    public static Judgement Of(PressureDecay decay, WrittenLimit limit)
    {
        var measured = new Measured(
            decay.Rate.SiValue,
            Unit,
            decay.ExpandedUncertainty.SiValue
        ).NotBelowZero();
        var judgement = Comparison.AtMost(measured, limit);
        var smallest = new Measured(SmallestSeen(decay), Unit);
        var isBlind = Comparison.AtMost(smallest, limit).Verdict != Verdict.Pass;
        return judgement.Verdict == Verdict.Pass && isBlind
            ? judgement with
            {
                Verdict = Verdict.Undecided,
                Sentence =
                    $"The test would only have seen a leak of {Figures.Format(smallest.In(limit.Unit).Value, 3)} {limit.Unit}, more than the limit of {limit}: hold longer, or measure temperature better.",
            }
            : judgement;
    }

    private static double SmallestSeen(PressureDecay decay) =>
        Math.Max(decay.DetectionLimit.SiValue, -2 * decay.Rate.SiValue);
}
