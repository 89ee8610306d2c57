using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>Margin of safety <c>MS = allowable/(FS·applied) − 1</c>; met from zero upwards. Definition of the trade.</summary>
public sealed record MarginOfSafety : IWorked
{
    private MarginOfSafety(double margin, Working working)
    {
        Value = margin;
        Working = working;
        Verdict = Comparison.AtLeast(new(margin, ""), WrittenLimit.Exact(0, "")).Verdict;
    }

    /// <summary>The margin, a plain number.</summary>
    public double Value { get; }

    /// <summary>Pass from zero upwards; nothing is rounded.</summary>
    public Verdict Verdict { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the margin of two stresses, or of two pressures.</summary>
    /// <param name="allowable">Allowable stress or pressure, above zero.</param>
    /// <param name="applied">Applied stress or pressure, above zero.</param>
    /// <param name="factorOfSafety">Factor on what is applied, above zero.</param>
    public static Computed<MarginOfSafety> Compute(
        Pressure allowable,
        Pressure applied,
        double factorOfSafety
    )
    {
        var check = new InputCheck()
            .Positive("allowable", allowable.Megapascals, "MPa")
            .Positive("applied", applied.Megapascals, "MPa")
            .Positive("factor of safety", factorOfSafety);
        if (!check.IsClean)
        {
            return check.Refused<MarginOfSafety>();
        }

        var margin = (allowable / applied / factorOfSafety) - 1;
        var working = Working
            .Of("Margin of safety", "MS = allowable/(FS·applied) − 1")
            .Input("", "allowable", allowable.Megapascals, "MPa")
            .Input("", "applied", applied.Megapascals, "MPa")
            .Input("FS", "factor of safety", factorOfSafety)
            .Result("MS", "margin of safety", margin)
            .Build();
        return Computed.Of(new MarginOfSafety(margin, working));
    }
}
