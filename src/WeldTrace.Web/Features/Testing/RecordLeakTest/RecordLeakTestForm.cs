using WeldTrace.Domain.Testing;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Testing.RecordLeakTest;

/// <summary>What was typed for a leak test, of either method.</summary>
public sealed class RecordLeakTestForm
{
    public const int MostReadings = 60;
    public const int MostPlaces = 8;
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

    /// <summary>Logger file of a decay test, in the place of typed readings.</summary>
    public IFormFile? Log { get; set; }

    /// <summary>Readings that the bench sent by itself, to be taken in the place of typed ones; null to leave them.</summary>
    public Guid? Arrived { get; set; }

    // A form sent without any of them arrives as null.
    public List<BubblePlaceRow> Marked
    {
        get;
        set => field = value ?? [];
    } = [];

    public TracerForm Tracer
    {
        get;
        set => field = value ?? new();
    } = new();

    public bool CautionsRead { get; set; }

    public string? Remark { get; set; }

    public string? Password { get; set; }

    /// <summary>The field of the form that holds what the domain refuses by another name.</summary>
    public static string? TracerFieldOf(string? refused) =>
        refused switch
        {
            nameof(TracerObservation.CalibratedLeak) => TracerField(nameof(TracerForm.LeakRate)),
            nameof(TracerObservation.CalibratedLeakUncertainty) => TracerField(
                nameof(TracerForm.LeakUncertainty)
            ),
            nameof(TracerObservation.SignalOfCalibratedLeak) => TracerField(
                nameof(TracerForm.SignalOfLeak)
            ),
            nameof(TracerObservation.ConcentrationPercent) => TracerField(
                nameof(TracerForm.Concentration)
            ),
            nameof(TracerObservation.ConcentrationUncertaintyPercent) => TracerField(
                nameof(TracerForm.ConcentrationUncertainty)
            ),
            { } name when typeof(TracerForm).GetProperty(name) is not null => TracerField(name),
            _ => refused,
        };

    private static string TracerField(string name) => $"{nameof(Tracer)}.{name}";

    /// <summary>Names of all controls, rows included.</summary>
    public IEnumerable<string> FieldNames =>
        typeof(RecordLeakTestForm)
            .GetProperties()
            .Select(p => p.Name)
            .Concat(typeof(TracerForm).GetProperties().Select(p => $"{nameof(Tracer)}.{p.Name}"))
            .Concat(
                Readings.SelectMany(
                    (_, i) =>
                        new[]
                        {
                            Name(i, nameof(LeakReadingRow.Seconds)),
                            Name(i, nameof(LeakReadingRow.GaugePressure)),
                            Name(i, nameof(LeakReadingRow.GasTemperature)),
                            Name(i, nameof(LeakReadingRow.AmbientTemperature)),
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

    public void AddPlaces()
    {
        while (Marked.Count < MostPlaces)
        {
            Marked.Add(new BubblePlaceRow());
        }
    }

    /// <summary>The decay test as typed; rows left empty are left out, and all are when a logger file is brought.</summary>
    /// <param name="entries">Takes what is no number.</param>
    /// <param name="logged">Readings of the logger file; null without one.</param>
    public DecayObservation ReadDecay(Entries entries, IReadOnlyList<LeakReading>? logged = null)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new DecayObservation(
            logged ?? ReadRows(entries),
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

    private IReadOnlyList<LeakReading> ReadRows(Entries entries) =>
        [
            .. Readings
                .Take(MostReadings)
                .Select((row, index) => (row, index))
                .Where(r => !r.row.IsEmpty)
                .Select(r => ReadRow(entries, r.row, r.index)),
        ];

    private static LeakReading ReadRow(Entries entries, LeakReadingRow row, int index) =>
        new(
            entries.Whole(
                row.Seconds,
                "seconds",
                $"Reading {index + 1}: time",
                Name(index, nameof(row.Seconds))
            ),
            entries.Number(
                row.GaugePressure,
                "bar",
                $"Reading {index + 1}: gauge pressure",
                Name(index, nameof(row.GaugePressure))
            ),
            entries.Number(
                row.GasTemperature,
                "°C",
                $"Reading {index + 1}: temperature",
                Name(index, nameof(row.GasTemperature))
            )
        )
        {
            AmbientTemperature = entries.OptionalNumber(
                row.AmbientTemperature,
                "°C",
                $"Reading {index + 1}: temperature of the room",
                Name(index, nameof(row.AmbientTemperature))
            ),
        };

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
        )
        {
            Marked = ReadPlaces(entries),
        };
    }

    private List<BubblePlace>? ReadPlaces(Entries entries)
    {
        List<BubblePlace> places =
        [
            .. Marked
                .Take(MostPlaces)
                .Where(m => !string.IsNullOrWhiteSpace(m.Angle))
                .Select(
                    (m, i) =>
                        new BubblePlace(
                            string.IsNullOrWhiteSpace(m.Joint) ? null : m.Joint,
                            entries.Number(m.Angle, "°", $"Place {i + 1}: angle", nameof(Marked))
                        )
                ),
        ];
        return places.Count == 0 ? null : places;
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

    public string? AmbientTemperature { get; set; }

    public bool IsEmpty => string.IsNullOrWhiteSpace(Seconds + GaugePressure + GasTemperature);
}

/// <summary>One place where bubbles rose, as typed or marked.</summary>
public sealed class BubblePlaceRow
{
    /// <summary>Code of the joint; empty away from the welds.</summary>
    public string? Joint { get; set; }

    public string? Angle { get; set; }
}
