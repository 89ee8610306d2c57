using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Signals;

/// <summary>
/// What lies below the line of the spindle beside that line, both as root mean squares: <c>r = L/(a/√2)</c>. A sine of amplitude a has the
/// root mean square a/√2. The band, 0.9 of the spindle's frequency, is common practice, no source.
/// </summary>
public sealed record LowBand : IWorked
{
    private LowBand(double amplitude, double rootMeanSquare)
    {
        Ratio = Finite.Require(rootMeanSquare * Math.Sqrt(2) / amplitude);
        Working = Working
            .Of("Low-frequency content beside the line of the spindle", "r = L/(a/√2)")
            .Input("a", "amplitude at the spindle's frequency", amplitude)
            .Input("L", "root mean square below 0.9 of that frequency", rootMeanSquare)
            .Result("r", "low band over the line", Ratio)
            .From("Definition of the root mean square; the band is common practice, no source.")
            .Build();
    }

    /// <summary>Low band over the line.</summary>
    public double Ratio { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Compares the two, in one unit.</summary>
    /// <param name="amplitude">One-sided amplitude at the spindle's frequency, above zero.</param>
    /// <param name="rootMeanSquare">Root mean square below 0.9 of that frequency, zero or above.</param>
    public static Computed<LowBand> Compute(double amplitude, double rootMeanSquare) =>
        new InputCheck()
            .Positive("amplitude", amplitude)
            .NotNegative("root mean square", rootMeanSquare)
            .Compute(() => new LowBand(amplitude, rootMeanSquare));
}
