using System.Globalization;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.LogJudging;

/// <summary>One parameter in one phase, as page and paper show it.</summary>
public sealed record ShownPhaseLine(string Phase, WeldParameter Parameter, string Unit)
{
    public required string Mean { get; init; }

    public required string Deviation { get; init; }

    public required string P1 { get; init; }

    public required string Median { get; init; }

    public required string P99 { get; init; }

    public required string Drift { get; init; }

    public required string Change { get; init; }
}

/// <summary>The figures of phases in words.</summary>
public static class PhaseText
{
    public const string Legend =
        "Drift: change of the straight line through all samples by least squares. End less start: mean of the last 256 samples less that of the first, of a short phase of a tenth of it. Percentiles of phases other than the traverse are within an 8192nd of the column's range.";

    public static IEnumerable<ShownPhaseLine> Lines(LoggedPhaseFigures phase, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(phase);
        return phase.Parameters.Select(found => new ShownPhaseLine(
            phase.Phase,
            found.Parameter,
            ParameterText.UnitOf(found.Parameter, units).Symbol
        )
        {
            Mean = ParameterText.Measured(found.Parameter, found.MeanSi, units),
            Deviation = Difference(found.Parameter, found.StandardDeviationSi, units),
            P1 = Measured(found.Parameter, found.P1Si, units),
            Median = Measured(found.Parameter, found.MedianSi, units),
            P99 = Measured(found.Parameter, found.P99Si, units),
            Drift = Difference(found.Parameter, found.DriftSi, units),
            Change = Difference(found.Parameter, found.ChangeSi, units),
        });
    }

    /// <summary>How long a phase lasted, how far the tool went, and what the spindle spent.</summary>
    public static string Sentence(LoggedPhaseFigures phase)
    {
        ArgumentNullException.ThrowIfNull(phase);
        List<string> parts =
        [
            $"{SensibleDigits.Fixed(phase.Seconds, 1)} s",
            $"{SensibleDigits.Fixed(phase.Metres * 1000, 1)} mm of seam",
        ];
        if (phase.SpindleJoules is { } joules)
        {
            parts.Add($"{SensibleDigits.Show(joules / 1000, 3)} kJ of the spindle");
        }

        if (phase.LineEnergyJoulesPerMetre is { } energy)
        {
            parts.Add($"{SensibleDigits.Show(energy / 1000, 3)} J/mm");
        }

        if (phase.PitchMetres is { } pitch)
        {
            parts.Add($"weld pitch {SensibleDigits.Show(pitch * 1000, 3)} mm/rev");
        }

        return string.Create(
            CultureInfo.InvariantCulture,
            $"{phase.Phase}: {string.Join(", ", parts)}"
        );
    }

    private static string Measured(WeldParameter parameter, double? si, UnitSystem units) =>
        si is { } value ? ParameterText.Measured(parameter, value, units) : "–";

    // A difference has no offset: of a temperature in °C it is that in K.
    private static string Difference(WeldParameter parameter, double? si, UnitSystem units)
    {
        var unit = ParameterText.UnitOf(parameter, units);
        return si is { } value ? SensibleDigits.Show(unit.FromSi(value) - unit.FromSi(0), 3) : "–";
    }
}
