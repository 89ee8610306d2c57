using WeldTrace.Domain.Testing;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;

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

    /// <summary>Unit of what is measured before and after: mm for a dimension, or that of a strain.</summary>
    public string DimensionUnit { get; set; } = Millimetres;

    public string? DimensionName { get; set; }

    public string? DimensionBefore { get; set; }

    public string? DimensionUncertainty { get; set; }

    public string? StrainLength { get; set; }

    /// <summary>Rows for further places; a row without a name is left out.</summary>
    // A form sent without any of them arrives as null.
    public List<PlaceRow> FurtherPlaces
    {
        get;
        set => field = [.. (value ?? []).Take(PressureSetUp.MostPlaces - 1)];
    } = [];

    public bool CautionsRead { get; set; }

    /// <summary>Whether the vessel is a sample that goes on to burst.</summary>
    public bool ToBurst { get; set; }

    public string? Remark { get; set; }

    public string? Password { get; set; }

    public PressureSetUp Read(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var isStrain = DimensionUnit == PressureSetUp.StrainUnit;
        var (unit, what) = isStrain
            ? (PressureSetUp.StrainUnit, "Strain")
            : (Millimetres, "Dimension");
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
                unit,
                $"{what} before the test",
                nameof(DimensionBefore)
            ),
            entries.Number(
                DimensionUncertainty,
                unit,
                $"Standard uncertainty of the {what.ToLowerInvariant()}",
                nameof(DimensionUncertainty)
            ),
            CautionsRead
        )
        {
            ToBurst = ToBurst ? true : null,
            FurtherPlaces = ReadPlaces(unit, isStrain, entries) is { Count: > 0 } places
                ? places
                : null,
            StrainLength = isStrain
                ? entries.Number(
                    StrainLength,
                    Millimetres,
                    "Length that the strain stands for",
                    nameof(StrainLength)
                )
                : null,
        };
    }

    /// <summary>Gives the page its empty rows.</summary>
    public void AddRows()
    {
        while (FurtherPlaces.Count < PressureSetUp.MostPlaces - 1)
        {
            FurtherPlaces.Add(new PlaceRow());
        }
    }

    private List<MeasuredPlace> ReadPlaces(string unit, bool isStrain, Entries entries) =>
        [
            .. FurtherPlaces
                .Where(p => !string.IsNullOrWhiteSpace(p.Name + p.Before + p.StrainLength))
                .Select(p => new MeasuredPlace(
                    p.Name?.Trim() ?? "",
                    entries.Number(p.Before, unit, $"{NameOf(p)} before", nameof(FurtherPlaces)),
                    isStrain
                        ? entries.Number(
                            p.StrainLength,
                            Millimetres,
                            $"{NameOf(p)}: length that the strain stands for",
                            nameof(FurtherPlaces)
                        )
                        : null
                )),
        ];

    private static string NameOf(PlaceRow place) =>
        string.IsNullOrWhiteSpace(place.Name)
            ? "A further place"
            : Typed.Shorten(place.Name.Trim());

    private const string Millimetres = "mm";
}

/// <summary>A further place that is measured before and after.</summary>
public sealed class PlaceRow
{
    public string? Name { get; set; }

    public string? Before { get; set; }

    public string? StrainLength { get; set; }
}
