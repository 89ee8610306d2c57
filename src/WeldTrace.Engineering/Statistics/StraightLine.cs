namespace WeldTrace.Engineering.Statistics;

/// <summary>
/// Straight line of least squares: <c>slope = Σ(x − x̄)(y − ȳ)/Σ(x − x̄)²</c>, standard error <c>√(Σr²/(n − 2)/Σ(x − x̄)²)</c>
/// (NIST/SEMATECH e-Handbook 4.4.3.1).
/// </summary>
public sealed record StraightLine : IWorked
{
    private StraightLine(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        var line = LeastSquares.Of(x, y);
        (Slope, Start, StandardError) = (line.Slope, line.Start, line.StandardError);
        Working = Working
            .Of("Straight line of least squares", "b = Σ(x − x̄)(y − ȳ)/Σ(x − x̄)²; a = ȳ − b·x̄")
            .Input("n", "points", x.Count)
            .Input("x̄", "mean of x", x.Average())
            .Input("ȳ", "mean of y", y.Average())
            .Step("a", "value at x = 0", Start)
            .Step("", "standard error of the slope", StandardError)
            .Result("b", "slope", Slope)
            .From("NIST/SEMATECH e-Handbook 4.4.3.1.")
            .Build();
    }

    /// <summary>Rise of y for one unit of x.</summary>
    public double Slope { get; }

    /// <summary>y at x = 0.</summary>
    public double Start { get; }

    /// <summary>Standard error of the slope.</summary>
    public double StandardError { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Fits the line; refuses fewer than three points, points at one x, and numbers that are none.</summary>
    /// <param name="x">Places; at two different ones at least.</param>
    /// <param name="y">Values, as many.</param>
    public static Computed<StraightLine> Fit(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        var check = new InputCheck()
            .Require(
                x.Count >= 3 && x.Count == y.Count && x.Distinct().Count() >= 2,
                RefusalReason.TooFewData,
                "points",
                "Three are needed, at two different places at least.",
                "Add points."
            )
            .Sensible("x", x)
            .Sensible("y", y);
        return check.Compute(() => new StraightLine(x, y));
    }
}
