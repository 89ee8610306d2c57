using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Domain.Testing;

/// <summary>Readings of a tracer-gas test that can't be true, or can't serve the design's test.</summary>
internal static class TracerChecks
{
    private const double LargestSignal = 1e12;

    public static void Check(Checks checks, TracerObservation seen, PressurePlan plan)
    {
        checks
            .Text(seen.Gas, 40, "Name the tracer gas", nameof(seen.Gas))
            .That(
                seen.Places.Length <= TestRecord.LongestText,
                "places",
                $"Keep the places within {TestRecord.LongestText} characters.",
                nameof(seen.Places)
            );
        foreach (var (value, least, most, what, field) in Bounds(seen, plan))
        {
            Reading.Between(checks, value, least, most, what, field);
        }

        if (checks.AllHold)
        {
            LeakTestChecks.Pressurised(checks, seen.GaugePressure.InUnit(), plan, "The gauge");
            LeakTestChecks.Observed(checks, seen.DwellSeconds, plan, nameof(seen.DwellSeconds));
        }
    }

    private static IEnumerable<(
        Measured Value,
        double Least,
        double Most,
        string What,
        string Field
    )> Bounds(TracerObservation seen, PressurePlan plan) =>
        [
            Of(seen.ConcentrationPercent, 0.01, 100, "Share of tracer gas"),
            Of(seen.ConcentrationUncertaintyPercent, 0, 50, "Uncertainty of the share"),
            Of(seen.GaugePressure, 0, plan.Meop.Bar * 3, "Gauge pressure"),
            Of(seen.CalibratedLeak, 1e-13, 10, "Calibrated leak"),
            Of(seen.CalibratedLeakUncertainty, 0, 1, "Uncertainty of the calibrated leak"),
            Of(seen.SignalOfCalibratedLeak, 0, LargestSignal, "Signal of the calibrated leak"),
            Of(seen.Background, 0, LargestSignal, "Background"),
            Of(seen.SignalOfVessel, 0, LargestSignal, "Signal on the vessel"),
            Of(seen.SignalUncertainty, 1e-15, LargestSignal, "Uncertainty of a signal"),
        ];

    private static (Measured, double, double, string, string) Of(
        Measured value,
        double least,
        double most,
        string what,
        [System.Runtime.CompilerServices.CallerArgumentExpression(nameof(value))] string field = ""
    ) => (value, least, most, what, field[(field.IndexOf('.', StringComparison.Ordinal) + 1)..]);
}
