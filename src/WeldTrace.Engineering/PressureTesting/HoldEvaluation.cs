using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;
using static WeldTrace.Engineering.Statistics.StandardUncertainty;

namespace WeldTrace.Engineering.PressureTesting;

/// <summary>
/// Drop of pressure during a hold against the allowed drop. Gas: <c>Δp = p1 − p2·T1/T2</c>, absolute; liquid: <c>Δp = p1 − p2 + s·(T2 − T1)</c>
/// with the sensitivity s when it is known. A rise of pressure is an error of at least its size and so counts as uncertainty.
/// Gas law and first-order propagation of uncertainty (GUM).
/// </summary>
public sealed record HoldEvaluation : IWorked
{
    private HoldEvaluation(HoldTest test)
    {
        var (first, last) = (test.Readings[0], test.Readings[^1]);
        Test = test;
        Held = last.Time - first.Time;
        MeasuredDrop = first.AbsolutePressure - last.AbsolutePressure;
        (var drop, var uncertainty) = test.Medium == TestMedium.Gas ? Gas(test) : Liquid(test);
        CompensatedDrop = Pressure.FromPascals(drop);
        ExpandedUncertainty = Pressure.FromPascals(CoverageFactor * uncertainty);
        Judgement = Judge();
        Working = Show(first, last);
    }

    /// <summary>The hold that was evaluated.</summary>
    public HoldTest Test { get; }

    /// <summary>Time between the first and the last reading.</summary>
    public TimeSpan Held { get; }

    /// <summary>Drop as read.</summary>
    public Pressure MeasuredDrop { get; }

    /// <summary>Drop at the temperature of the first reading; negative for a rise.</summary>
    public Pressure CompensatedDrop { get; }

    /// <summary>Expanded uncertainty of <see cref="CompensatedDrop"/>, coverage factor 2.</summary>
    public Pressure ExpandedUncertainty { get; }

    /// <summary>Judgement of drop and time; a hold that was too short is undecided at best.</summary>
    public Judgement Judgement { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Evaluates a hold; refused with every reason that <see cref="HoldTest.Check"/> finds.</summary>
    public static Computed<HoldEvaluation> Evaluate(HoldTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        return InputCheck.From(test.Check()).Compute(() => new HoldEvaluation(test));
    }

    private static (double Drop, double Uncertainty) Gas(HoldTest test)
    {
        var (first, last) = (test.Readings[0], test.Readings[^1]);
        var (t1, t2, p2) = (first.Medium.Kelvin, last.Medium.Kelvin, last.AbsolutePressure.Pascals);
        var (pressure, kelvin) = (
            test.PressureUncertainty.Pascals,
            test.TemperatureUncertaintyKelvin
        );
        var uncertainty = Combine(
            pressure,
            pressure * t1 / t2,
            p2 / t2 * kelvin,
            p2 * t1 / (t2 * t2) * kelvin
        );
        return (first.AbsolutePressure.Pascals - (p2 * t1 / t2), uncertainty);
    }

    private static (double Drop, double Uncertainty) Liquid(HoldTest test)
    {
        var (first, last) = (test.Readings[0], test.Readings[^1]);
        var sensitivity = test.LiquidPressurePerKelvin?.Pascals ?? 0;
        var drop =
            (first.AbsolutePressure - last.AbsolutePressure).Pascals
            + (sensitivity * (last.Medium.Kelvin - first.Medium.Kelvin));
        var (pressure, kelvin) = (
            test.PressureUncertainty.Pascals,
            test.TemperatureUncertaintyKelvin
        );
        return (drop, Math.Sqrt(2) * Combine(pressure, sensitivity * kelvin));
    }

    private Judgement Judge()
    {
        var measured = new Measured(CompensatedDrop.Pascals, "Pa", ExpandedUncertainty.Pascals);
        var judgement = Comparison.AtMost(measured.NotBelowZero(), Test.AllowedDrop);
        return judgement.Verdict == Verdict.Pass && Held < Test.RequiredHold
            ? judgement with
            {
                Verdict = Verdict.Undecided,
                Sentence =
                    $"The pressure was held for {Figures.Format(Held.TotalMinutes, 4)} min, less than the {Figures.Format(Test.RequiredHold.TotalMinutes, 4)} min required.",
            }
            : judgement;
    }

    private Working Show(HoldReading first, HoldReading last) =>
        Working
            .Of(
                "Pressure drop during a hold",
                Test.Medium == TestMedium.Gas ? "Δp = p1 − p2·T1/T2" : "Δp = p1 − p2 + s·(T2 − T1)"
            )
            .Input("p1", "first absolute pressure", first.AbsolutePressure.Pascals, "Pa")
            .Input("T1", "first temperature", first.Medium.Kelvin, "K")
            .Input("p2", "last absolute pressure", last.AbsolutePressure.Pascals, "Pa")
            .Input("T2", "last temperature", last.Medium.Kelvin, "K")
            .OptionalInput(
                "s",
                "pressure per kelvin of the liquid",
                Test.LiquidPressurePerKelvin?.Pascals,
                "Pa"
            )
            .Input(
                "u_p",
                "standard uncertainty of a pressure",
                Test.PressureUncertainty.Pascals,
                "Pa"
            )
            .Input(
                "u_T",
                "standard uncertainty of a temperature",
                Test.TemperatureUncertaintyKelvin,
                "K"
            )
            .Input("", "required hold", Test.RequiredHold.TotalMinutes, "min")
            .Step("", "time held", Held.TotalMinutes, "min")
            .Step("", "drop as read", MeasuredDrop.Pascals, "Pa")
            .Result("Δp", "compensated drop", CompensatedDrop.Pascals, "Pa")
            .Result("U", "expanded uncertainty, k = 2", ExpandedUncertainty.Pascals, "Pa")
            .From("Gas law; first-order propagation of uncertainty (GUM).")
            .Validity(
                Validity.When(
                    Test.Medium == TestMedium.Gas || Test.LiquidPressurePerKelvin is not null,
                    "The change of pressure with temperature is accounted for.",
                    "the drop of a liquid is compared as read; keep the temperature steady."
                )
            )
            .Build();
}
