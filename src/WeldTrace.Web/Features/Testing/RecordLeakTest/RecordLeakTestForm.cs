using WeldTrace.Domain.Testing;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Testing.RecordLeakTest;

/// <summary>What was typed for a leak test, of either method.</summary>
public sealed class RecordLeakTestForm
{
    public const int MostReadings = 60;
    public const int AddedReadings = 5;

    public Guid Id { get; set; }

    public string? Act { get; set; }

    // A form sent without any of them arrives as null.
    public List<LeakReadingRow> Readings
    {
        get;
        set => field = value ?? [];
    } = [];

    public string? AtmosphericPressure { get; set; }

    public string? GaugeUncertainty { get; set; }

    public string? TemperatureUncertainty { get; set; }

    public string? VolumeUncertaintyPercent { get; set; }

    public string? Gauge { get; set; }

    public string? Thermometer { get; set; }

    public string? GaugePressure { get; set; }

    public string? Liquid { get; set; }

    public string? DepthOfLiquid { get; set; }

    public string? ObservedSeconds { get; set; }

    public string? Bubbles { get; set; }

    public string? BubbleDiameter { get; set; }

    public string? Places { get; set; }

    public string? Remark { get; set; }

    /// <summary>Names of all controls, rows included.</summary>
    public IEnumerable<string> FieldNames =>
        typeof(RecordLeakTestForm)
            .GetProperties()
            .Select(p => p.Name)
            .Concat(
                Readings.SelectMany(
                    (_, i) =>
                        new[]
                        {
                            Name(i, nameof(LeakReadingRow.Seconds)),
                            Name(i, nameof(LeakReadingRow.GaugePressure)),
                            Name(i, nameof(LeakReadingRow.GasTemperature)),
                        }
                )
            );

    public void AddRows(int count)
    {
        while (count-- > 0 && Readings.Count < MostReadings)
        {
            Readings.Add(new LeakReadingRow());
        }
    }

    /// <summary>The decay test as typed; rows left empty are left out.</summary>
    public DecayObservation ReadDecay(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new DecayObservation(
            [
                .. Readings
                    .Take(MostReadings)
                    .Select((row, index) => (row, index))
                    .Where(r => !r.row.IsEmpty)
                    .Select(r => new LeakReading(
                        entries.Whole(
                            r.row.Seconds,
                            "seconds",
                            $"Reading {r.index + 1}: time",
                            Name(r.index, nameof(r.row.Seconds))
                        ),
                        entries.Number(
                            r.row.GaugePressure,
                            "bar",
                            $"Reading {r.index + 1}: gauge pressure",
                            Name(r.index, nameof(r.row.GaugePressure))
                        ),
                        entries.Number(
                            r.row.GasTemperature,
                            "°C",
                            $"Reading {r.index + 1}: temperature",
                            Name(r.index, nameof(r.row.GasTemperature))
                        )
                    )),
            ],
            entries.Number(AtmosphericPressure, "mbar", "Barometer", nameof(AtmosphericPressure)),
            entries.Number(
                GaugeUncertainty,
                "mbar",
                "Standard uncertainty of the gauge",
                nameof(GaugeUncertainty)
            ),
            entries.Number(
                TemperatureUncertainty,
                "K",
                "Standard uncertainty of the thermometer",
                nameof(TemperatureUncertainty)
            ),
            entries.Number(
                VolumeUncertaintyPercent,
                "%",
                "Standard uncertainty of the volume",
                nameof(VolumeUncertaintyPercent)
            ),
            ""
        );
    }

    /// <summary>The bubble test as typed.</summary>
    public BubbleTest ReadBubbles(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new BubbleTest(
            entries.Number(GaugePressure, "bar", "Gauge pressure", nameof(GaugePressure)),
            Liquid ?? "",
            entries.Number(
                DepthOfLiquid,
                "mm",
                "Depth of the seam below the surface",
                nameof(DepthOfLiquid)
            ),
            entries.Number(AtmosphericPressure, "mbar", "Barometer", nameof(AtmosphericPressure)),
            entries.Whole(
                ObservedSeconds,
                "seconds",
                "Time of observation",
                nameof(ObservedSeconds)
            ),
            entries.Whole(Bubbles, "bubbles, 0 for none", "Bubbles counted", nameof(Bubbles)),
            entries.Number(BubbleDiameter, "mm", "Diameter of a bubble", nameof(BubbleDiameter)),
            Places ?? "",
            ""
        );
    }

    private static string Name(int index, string property) =>
        FormattableString.Invariant($"{nameof(Readings)}[{index}].{property}");
}

/// <summary>One row of the table of readings.</summary>
public sealed class LeakReadingRow
{
    public string? Seconds { get; set; }

    public string? GaugePressure { get; set; }

    public string? GasTemperature { get; set; }

    public bool IsEmpty => string.IsNullOrWhiteSpace(Seconds + GaugePressure + GasTemperature);
}
