using System.Globalization;
using WeldTrace.Documents;
using WeldTrace.Documents.CalculationSheets;
using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Units;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Features.Desk.LeakPlanning;

/// <summary>What follows for a leak test.</summary>
internal static class LeakFigures
{
    private const double Tenth = 0.1;
    private const double OneHundredth = 0.01;

    private static readonly Length SmallBubble = Length.FromMillimetres(2);
    private static readonly Temperature Freezing = Temperature.FromDegreesCelsius(0);

    public static IEnumerable<LabelledValue> Of(
        LeakPlan plan,
        DecaySensitivity sensitivity,
        TimeSpan hold
    )
    {
        yield return new(
            "Detection limit of the planned hold",
            Show(plan, sensitivity.DetectionLimit)
        );
        yield return new("Decision threshold", Show(plan, sensitivity.DecisionThreshold));
        yield return new("Hold needed for the wanted leak", Time(hold));
        yield return new(
            "Time in which it takes 1 % of the pressure",
            Time(LeakRates.TimeToLose(OneHundredth, plan.Absolute, plan.Volume, plan.Wanted))
        );
        yield return new(
            "A change of 0.1 K feigns",
            SensibleDigits.Show(
                LeakRates.ApparentChange(plan.Absolute, plan.Gas, Tenth).Millibar,
                3
            ) + "\u00a0mbar"
        );
        yield return new(
            "One bubble of 2 mm in water, each",
            Time(
                TimeSpan.FromSeconds(
                    Math.Min(
                        BubbleImmersion.SecondsPerBubble(plan.Wanted, SmallBubble, plan.Air),
                        TimeSpan.FromDays(36_500).TotalSeconds
                    )
                )
            )
        );
    }

    public static IEnumerable<string> Statements(
        LeakPlan plan,
        DecaySensitivity sensitivity,
        TimeSpan hold
    )
    {
        yield return sensitivity.DetectionLimit > plan.Wanted
            ? $"The planned hold is too short: a leak of {Show(plan, plan.Wanted)} may go unseen. Hold {Time(hold)}, or read pressure and temperature better."
            : $"The planned hold sees a leak of {Show(plan, plan.Wanted)} with at least 95 % probability.";
        yield return "Leak rates are throughputs at the temperature of the gas. Real leaks are mixtures of viscous and molecular flow: take the rates in service as a range.";
    }

    public static CalculationTable InUnits(LeakPlan plan) =>
        new(
            "The wanted leak in other units",
            ["Unit", "Rate"],
            [
                .. UnitCatalogue
                    .Of(Dimension.LeakRate)
                    .Select(u =>
                        (IReadOnlyList<string>)
                            [u.Symbol, SensibleDigits.Show(u.FromSi(plan.Wanted.SiValue))]
                    ),
                [
                    "std cm³/s (0 °C, 1013.25 mbar)",
                    SensibleDigits.Show(
                        LeakRates.StandardCubicCentimetresPerSecond(plan.Wanted, plan.Gas, Freezing)
                    ),
                ],
                [
                    $"g of {plan.TestGas.Name} in a year",
                    SensibleDigits.Show(
                        LeakRates.KilogramsPerSecond(plan.Wanted, plan.Gas, plan.TestGas)
                            * 1000
                            * TimeSpan.FromDays(365.25).TotalSeconds
                    ),
                ],
            ]
        );

    public static CalculationTable InService(LeakPlan plan, LeakConversion service) =>
        new(
            $"The wanted leak in service, with {plan.InService.Gas.Name}",
            ["If the flow is", "Rate", "Ratio to the test"],
            [
                [
                    "viscous",
                    Show(plan, service.Viscous),
                    SensibleDigits.Show(service.ViscousFactor, 3),
                ],
                [
                    "molecular",
                    Show(plan, service.Molecular),
                    SensibleDigits.Show(service.MolecularFactor, 3),
                ],
            ]
        );

    private static string Show(LeakPlan plan, LeakRate rate) =>
        $"{SensibleDigits.Show(plan.Unit.FromSi(rate.SiValue), 3)}\u00a0{plan.Unit.Symbol}";

    private static string Time(TimeSpan time) =>
        time.TotalDays >= 3650 ? "more than ten years"
        : time.TotalHours >= 48 ? Number(time.TotalDays, "days")
        : time.TotalMinutes >= 120 ? Number(time.TotalHours, "h")
        : time.TotalSeconds >= 120 ? Number(time.TotalMinutes, "min")
        : SensibleDigits.Show(time.TotalSeconds, 3) + "\u00a0s";

    private static string Number(double value, string unit) =>
        value.ToString("0.0", CultureInfo.InvariantCulture) + "\u00a0" + unit;
}
