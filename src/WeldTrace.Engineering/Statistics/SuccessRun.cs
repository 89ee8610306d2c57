using MathNet.Numerics.Distributions;

namespace WeldTrace.Engineering.Statistics;

/// <summary>Reliability shown by trials: success run <c>n = ⌈ln(1 − C)/ln R⌉</c>; with failures Clopper and Pearson.</summary>
public static class SuccessRun
{
    private const double Least = 0.001;
    private const double Largest = 0.999999;

    /// <summary>Trials without failure that show a reliability.</summary>
    /// <param name="reliability">R, between 0 and 1.</param>
    /// <param name="confidence">C, between 0 and 1.</param>
    public static int Trials(double reliability, double confidence)
    {
        NormalQuantile.RequireProbability(reliability, nameof(reliability));
        NormalQuantile.RequireProbability(confidence, nameof(confidence));
        var exact = Math.Log(1 - confidence) / Math.Log(reliability);
        return (int)Math.Min(Math.Ceiling(exact - 1e-9), int.MaxValue);
    }

    /// <summary><see cref="Trials"/> with its working.</summary>
    /// <param name="reliability">R, 0.001 to 0.999999.</param>
    /// <param name="confidence">C, 0.001 to 0.999999.</param>
    public static Computed<int> Compute(double reliability, double confidence) =>
        new InputCheck()
            .Between("reliability", reliability, Least, Largest)
            .Between("confidence", confidence, Least, Largest)
            .Compute(() =>
            {
                var trials = Trials(reliability, confidence);
                return (
                    trials,
                    Working
                        .Of("Trials without failure", "n = ⌈ln(1 − C)/ln R⌉")
                        .Input("R", "reliability to be shown", reliability)
                        .Input("C", "confidence", confidence)
                        .Result("n", "trials, none of which may fail", trials)
                        .From("Success run; binomial distribution, no failure.")
                        .Build()
                );
            });

    /// <summary>Reliability shown by trials without failure: (1 − C)^(1/n).</summary>
    /// <param name="trials">n, 1 or more.</param>
    /// <param name="confidence">C, between 0 and 1.</param>
    public static double Reliability(int trials, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        NormalQuantile.RequireProbability(confidence, nameof(confidence));
        return Math.Pow(1 - confidence, 1.0 / trials);
    }

    /// <summary>Two-sided interval of a proportion (Clopper, Pearson 1934).</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 1 or more.</param>
    /// <param name="confidence">Between 0 and 1.</param>
    public static Interval Proportion(int successes, int trials, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(successes);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(successes, trials);
        var tail = (1 - NormalQuantile.RequireProbability(confidence, nameof(confidence))) / 2;
        return new(
            successes == 0 ? 0 : Beta.InvCDF(successes, trials - successes + 1, tail),
            successes == trials ? 1 : Beta.InvCDF(successes + 1, trials - successes, 1 - tail),
            confidence
        );
    }
}
