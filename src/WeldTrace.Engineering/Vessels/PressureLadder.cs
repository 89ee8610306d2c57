using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>Factors of a pressure ladder with where they come from.</summary>
/// <param name="Proof">Proof pressure over MEOP, above 1.</param>
/// <param name="Burst">Least burst pressure over MEOP, above the proof factor.</param>
/// <param name="Source">Document, edition and clause; contradictory public texts exist, so it is never left out.</param>
/// <param name="EnvironmentalCorrection">Strength at test over strength at the worst operating temperature; 1 without.</param>
public sealed record LadderFactors(
    double Proof,
    double Burst,
    string Source,
    double EnvironmentalCorrection = 1
);

/// <summary>
/// Pressures of a vessel from its MEOP: <c>proof = PF·ECF·MEOP</c>, <c>burst = BF·ECF·MEOP</c>. Gauge. The factors are data of the design.
/// </summary>
public sealed record PressureLadder : IWorked
{
    private PressureLadder(Pressure meop, LadderFactors factors)
    {
        Meop = meop;
        Factors = factors;
        Proof = meop * (factors.Proof * factors.EnvironmentalCorrection);
        LeastBurst = meop * (factors.Burst * factors.EnvironmentalCorrection);
        Working = Working
            .Of("Pressure ladder", "proof = PF·ECF·MEOP; burst = BF·ECF·MEOP")
            .Input("MEOP", "maximum expected operating pressure", meop.Bar, "bar")
            .Input("PF", "proof factor", factors.Proof)
            .Input("BF", "burst factor", factors.Burst)
            .Input("ECF", "environmental correction", factors.EnvironmentalCorrection)
            .Result("", "proof pressure", Proof.Bar, "bar")
            .Result("", "least burst pressure", LeastBurst.Bar, "bar")
            .From(factors.Source)
            .Build();
    }

    /// <summary>Maximum expected operating pressure.</summary>
    public Pressure Meop { get; }

    /// <summary>Factors with their source.</summary>
    public LadderFactors Factors { get; }

    /// <summary>Proof pressure.</summary>
    public Pressure Proof { get; }

    /// <summary>Least burst pressure.</summary>
    public Pressure LeastBurst { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Builds the ladder.</summary>
    /// <param name="meop">MEOP, gauge, above zero.</param>
    /// <param name="factors">Factors with their source.</param>
    public static Computed<PressureLadder> Compute(Pressure meop, LadderFactors factors)
    {
        ArgumentNullException.ThrowIfNull(factors);
        var check = new InputCheck()
            .Positive("MEOP", meop.Bar, "bar")
            .Between("proof factor", factors.Proof, 1, 100)
            .Between("environmental correction", factors.EnvironmentalCorrection, 0.1, 10)
            .Require(
                factors.Burst > factors.Proof && factors.Burst <= 100,
                RefusalReason.OutOfRange,
                "burst factor",
                "It is not above the proof factor, or above 100.",
                "Enter the factors of one document."
            )
            .Require(
                !string.IsNullOrWhiteSpace(factors.Source),
                RefusalReason.TooFewData,
                "source of the factors",
                "It is missing.",
                "Name document, edition and clause."
            );
        return check.Compute(() => new PressureLadder(meop, factors));
    }
}
