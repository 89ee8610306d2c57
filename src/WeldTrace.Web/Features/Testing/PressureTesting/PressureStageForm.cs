using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Testing.PressureTesting;

/// <summary>What was typed for one stage of a pressure test.</summary>
public sealed class PressureStageForm
{
    /// <summary>Number of the stage that the person saw, from 1.</summary>
    public int StageNumber { get; set; }

    public string? StartPressure { get; set; }

    public string? StartTemperature { get; set; }

    public string? EndPressure { get; set; }

    public string? EndTemperature { get; set; }

    public string? HeldSeconds { get; set; }

    public string? Dimension { get; set; }

    public StageReading Read(PressureStageKind kind, Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return kind == PressureStageKind.ReturnToZero
            ? new StageReading(
                null,
                null,
                null,
                null,
                0,
                entries.Number(
                    Dimension,
                    "mm",
                    "Dimension after the return to zero",
                    nameof(Dimension)
                )
            )
            : new StageReading(
                entries.Number(
                    StartPressure,
                    "bar",
                    "Pressure at the start of the hold",
                    nameof(StartPressure)
                ),
                entries.Number(
                    StartTemperature,
                    "°C",
                    "Temperature at the start",
                    nameof(StartTemperature)
                ),
                entries.Number(
                    EndPressure,
                    "bar",
                    "Pressure at the end of the hold",
                    nameof(EndPressure)
                ),
                entries.Number(
                    EndTemperature,
                    "°C",
                    "Temperature at the end",
                    nameof(EndTemperature)
                ),
                entries.Whole(HeldSeconds, "seconds", "Time held", nameof(HeldSeconds)),
                null
            );
    }
}
