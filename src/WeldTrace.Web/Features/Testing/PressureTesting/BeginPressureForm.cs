using WeldTrace.Domain.Testing;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Testing.PressureTesting;

/// <summary>What was typed for the set-up of a pressure test.</summary>
public sealed class BeginPressureForm
{
    public Guid Id { get; set; }

    public string? Gauge { get; set; }

    public string? GaugeUncertainty { get; set; }

    public string? Thermometer { get; set; }

    public string? TemperatureUncertainty { get; set; }

    public string? AtmosphericPressure { get; set; }

    public string? DimensionInstrument { get; set; }

    public string? DimensionName { get; set; }

    public string? DimensionBefore { get; set; }

    public string? DimensionUncertainty { get; set; }

    public bool CautionsRead { get; set; }

    /// <summary>Whether the vessel is a sample that goes on to burst.</summary>
    public bool ToBurst { get; set; }

    public string? Remark { get; set; }

    public PressureSetUp Read(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new PressureSetUp(
            "",
            entries.Number(
                GaugeUncertainty,
                "bar",
                "Standard uncertainty of the gauge",
                nameof(GaugeUncertainty)
            ),
            "",
            entries.Number(
                TemperatureUncertainty,
                "K",
                "Standard uncertainty of the thermometer",
                nameof(TemperatureUncertainty)
            ),
            entries.Number(AtmosphericPressure, "mbar", "Barometer", nameof(AtmosphericPressure)),
            DimensionName ?? "",
            entries.Number(
                DimensionBefore,
                "mm",
                "Dimension before the test",
                nameof(DimensionBefore)
            ),
            entries.Number(
                DimensionUncertainty,
                "mm",
                "Standard uncertainty of the dimension",
                nameof(DimensionUncertainty)
            ),
            CautionsRead
        )
        {
            ToBurst = ToBurst ? true : null,
        };
    }
}
