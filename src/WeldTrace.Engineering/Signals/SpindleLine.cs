using MathNet.Numerics.IntegralTransforms;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Signals;

/// <summary>
/// The line of the spindle in a force or torque signal, and what lies below it. Spindle frequency <c>f = n/60</c>; one-sided amplitude
/// <c>2·|X|/N</c>, root mean square <c>√2·|X|/N</c>; the low band reaches from above zero to 0.9 of the spindle frequency. A strong low band
/// goes with disturbed metal flow (Arbegast 2005, summary); an indicator for explanation, not for acceptance. Common practice.
/// </summary>
public sealed record SpindleLine : IWorked
{
    private const double LowBandShare = 0.9;
    private const double WantedSamplesPerTurn = 4;

    private SpindleLine(ReadOnlySpan<double> signal, double sampleHertz, RotationSpeed spindle)
    {
        Hertz = spindle.RevolutionsPerSecond;
        Amplitude = AmplitudeAt(signal, sampleHertz, Hertz);
        LowBandRms = RmsBelow(signal, sampleHertz, LowBandShare * Hertz);
        LowBandRatio = LowBand.Compute(Amplitude, LowBandRms).TryGet(out var band)
            ? band.Ratio
            : null;
        Working = Show(signal.Length, sampleHertz, spindle);
    }

    /// <summary>Frequency of the spindle in Hz.</summary>
    public double Hertz { get; }

    /// <summary>One-sided amplitude at that frequency, in the unit of the signal.</summary>
    public double Amplitude { get; }

    /// <summary>Root mean square of what lies below 0.9 of that frequency, without the mean, in the unit of the signal.</summary>
    public double LowBandRms { get; }

    /// <summary>Low band over the line of the spindle, both as root mean squares; null when there is no line.</summary>
    public double? LowBandRatio { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Looks at a record of evenly spaced samples.</summary>
    /// <param name="signal">Finite samples of the steady traverse, 16 or more; a whole number of turns leaks least.</param>
    /// <param name="sampleHertz">Samples per second, more than twice the spindle frequency.</param>
    /// <param name="spindle">Spindle speed, above zero.</param>
    public static Computed<SpindleLine> Compute(
        ReadOnlySpan<double> signal,
        double sampleHertz,
        RotationSpeed spindle
    )
    {
        double[] samples = [.. signal];
        var check = new InputCheck()
            .Positive("spindle speed", spindle.RevolutionsPerMinute, "rev/min")
            .Positive("samples per second", sampleHertz, "Hz")
            .Require(
                samples.Length >= 16,
                RefusalReason.TooFewData,
                "samples",
                "There are fewer than 16.",
                "Take a longer record."
            )
            .Require(
                sampleHertz > 2 * spindle.RevolutionsPerSecond,
                RefusalReason.OutsideValidity,
                "samples per second",
                "There are not more than two samples per turn of the spindle, so its line cannot be seen.",
                "Sample faster; use this record for windows only."
            )
            .Sensible("samples", samples);
        return check.Compute(() => new SpindleLine(samples, sampleHertz, spindle));
    }

    /// <summary>One-sided amplitude at a frequency by Goertzel's recursion, in the unit of the signal.</summary>
    /// <param name="signal">Finite samples, one or more, evenly spaced.</param>
    /// <param name="sampleHertz">Samples per second, above zero.</param>
    /// <param name="hertz">Frequency above zero, below half of the samples per second.</param>
    /// <exception cref="ArgumentException">There is no sample, or the frequency lies outside its range.</exception>
    public static double AmplitudeAt(ReadOnlySpan<double> signal, double sampleHertz, double hertz)
    {
        if (signal.IsEmpty || !(hertz > 0 && hertz < sampleHertz / 2))
        {
            throw new ArgumentException(
                "There is no sample, or the frequency is outside zero to half of the samples per second.",
                nameof(hertz)
            );
        }

        var turn = 2 * Math.PI * hertz / sampleHertz;
        var (twice, last, before) = (2 * Math.Cos(turn), 0.0, 0.0);
        foreach (var sample in signal)
        {
            (last, before) = (sample + (twice * last) - before, last);
        }

        var square = (last * last) + (before * before) - (twice * last * before);
        return Finite.Require(2 * Math.Sqrt(Math.Max(0, square)) / signal.Length);
    }

    private static double RmsBelow(ReadOnlySpan<double> signal, double sampleHertz, double hertz)
    {
        var count = signal.Length;
        var spectrum = new System.Numerics.Complex[count];
        for (var i = 0; i < count; i++)
        {
            spectrum[i] = signal[i];
        }

        Fourier.Forward(spectrum, FourierOptions.NoScaling);
        var last = Math.Min((int)Math.Ceiling(hertz * count / sampleHertz) - 1, (count - 1) / 2);
        var sum = 0.0;
        for (var line = 1; line <= last; line++)
        {
            var size = spectrum[line].Magnitude;
            sum += 2 * size * size;
        }

        return Finite.Require(Math.Sqrt(sum) / count);
    }

    private Working Show(int count, double sampleHertz, RotationSpeed spindle) =>
        Working
            .Of("Line of the spindle in a signal", "f = n/60; a = 2·|X|/N; ratio = L/(a/√2)")
            .Input("n", "spindle speed", spindle.RevolutionsPerMinute, "rev/min")
            .Input("N", "samples", count)
            .Input("", "samples per second", sampleHertz, "Hz")
            .Result("f", "spindle frequency", Hertz, "Hz")
            .Result("a", "amplitude at the spindle frequency", Amplitude)
            .Result("L", "root mean square below 0.9 of the spindle frequency", LowBandRms)
            .OptionalResult("ratio", "low band over spindle line", LowBandRatio)
            .From("Discrete Fourier transform, Goertzel's recursion; band limits common practice.")
            .Validity(
                Validity.When(
                    sampleHertz > WantedSamplesPerTurn * Hertz,
                    "There are more than four samples per turn of the spindle.",
                    "harmonics fold back onto the line; take it as a hint only."
                )
            )
            .Build();
}
