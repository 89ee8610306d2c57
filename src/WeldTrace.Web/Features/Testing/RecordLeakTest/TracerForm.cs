using WeldTrace.Domain.Testing;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Testing.RecordLeakTest;

/// <summary>What was typed for a tracer-gas test.</summary>
public sealed class TracerForm
{
    public string? Gas { get; set; }

    public string? Concentration { get; set; }

    public string? ConcentrationUncertainty { get; set; }

    public string? GaugePressure { get; set; }

    public string? DwellSeconds { get; set; }

    /// <summary>Mark of the calibrated leak.</summary>
    public string? LeakMark { get; set; }

    public string? LeakRate { get; set; }

    public string? LeakUncertainty { get; set; }

    public string? SignalOfLeak { get; set; }

    public string? Background { get; set; }

    public string? SignalOfVessel { get; set; }

    public string? SignalUncertainty { get; set; }

    public string? Places { get; set; }

    public TracerObservation Read(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new TracerObservation(
            Gas?.Trim() ?? "",
            Number(Concentration, "%", "Share of tracer gas", nameof(Concentration)),
            Number(
                ConcentrationUncertainty,
                "%",
                "Standard uncertainty of the share",
                nameof(ConcentrationUncertainty)
            ),
            Number(GaugePressure, "bar", "Gauge pressure", nameof(GaugePressure)),
            entries.Whole(DwellSeconds, "seconds", "Dwell", Name(nameof(DwellSeconds))),
            Number(LeakRate, "Pa·m³/s", "Rate of the calibrated leak", nameof(LeakRate)),
            Number(
                LeakUncertainty,
                "Pa·m³/s",
                "Standard uncertainty of the calibrated leak",
                nameof(LeakUncertainty)
            ),
            Number(
                SignalOfLeak,
                "of the detector",
                "Signal with the calibrated leak",
                nameof(SignalOfLeak)
            ),
            Number(Background, "of the detector", "Background", nameof(Background)),
            Number(
                SignalOfVessel,
                "of the detector",
                "Signal on the vessel",
                nameof(SignalOfVessel)
            ),
            Number(
                SignalUncertainty,
                "of the detector",
                "Standard uncertainty of a signal",
                nameof(SignalUncertainty)
            ),
            Places?.Trim() ?? "",
            ""
        );

        Domain.Records.Measured Number(string? text, string unit, string what, string field) =>
            entries.Number(text, unit, what, Name(field));
    }

    private static string Name(string field) => $"{nameof(RecordLeakTestForm.Tracer)}.{field}";
}
