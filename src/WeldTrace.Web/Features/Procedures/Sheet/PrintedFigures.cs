using System.Globalization;
using WeldTrace.Documents.Procedures;
using WeldTrace.Domain.Procedures;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Process;
using WeldTrace.Web.Features.Procedures.LiveFigures;
using MeasuredPin = WeldTrace.Domain.Tooling.MeasuredPin;
using ToolGeometry = WeldTrace.Domain.Tooling.ToolGeometry;

namespace WeldTrace.Web.Features.Procedures.Sheet;

/// <summary>The figures that follow from the windows, as a sheet prints them.</summary>
internal static class PrintedFigures
{
    public static IEnumerable<ComputedLine> Of(
        ProcedureContent content,
        ToolGeometry? tool,
        MeasuredPin? pin
    )
    {
        if (WindowFigures.Of(content, tool, pin) is not { AtSetPoint.IsRefused: false } figures)
        {
            yield break;
        }

        yield return new ComputedLine("Weld pitch", "mm/rev")
        {
            AtSetPoint = Text(figures.AtSetPoint.Value.Pitch.MillimetresPerRevolution),
            Least = Pitch(figures.Least),
            Greatest = Pitch(figures.Greatest),
            Working = "travel speed / spindle speed",
        };
        if (figures.Heat is { IsRefused: false } heat)
        {
            yield return new ComputedLine("Peak temperature, estimate", "°C")
            {
                AtSetPoint = Text(Math.Round(heat.Value.Middle.DegreesCelsius)),
                Least = Text(Math.Round(heat.Value.Low.DegreesCelsius)),
                Greatest = Text(Math.Round(heat.Value.High.DegreesCelsius)),
                Working = "Arbegast and Hartley 1998, from the heat index; test welds decide",
            };
        }

        if (figures.Energy is { IsRefused: false } energy)
        {
            yield return new ComputedLine("Line energy into the weld", "J/mm")
            {
                AtSetPoint = Text(energy.Value.LineEnergy.JoulesPerMillimetre),
                Working = "0.95 × spindle speed × torque / travel speed",
            };
        }

        if (figures.Ligament is { IsRefused: false } ligament)
        {
            yield return new ComputedLine("Penetration ligament", "mm")
            {
                AtSetPoint = Text(ligament.Value.Ligament.Millimetres),
                Working = figures.Pin is { } measured
                    ? FormattableString.Invariant(
                        $"{ligament.Working.Formula}; pin of {measured.ToolMark}, {Text(measured.Length.Millimetres)} mm as measured on {measured.On:yyyy-MM-dd}"
                    )
                    : ligament.Working.Formula,
            };
        }
    }

    private static string? Pitch(Computed<WeldKinematics> end) =>
        end.IsRefused ? null : Text(end.Value.Pitch.MillimetresPerRevolution);

    private static string Text(double value) => value.ToString("G3", CultureInfo.InvariantCulture);
}
