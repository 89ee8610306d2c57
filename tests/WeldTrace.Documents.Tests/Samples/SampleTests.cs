using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Traveler;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.Tests.Samples;

internal static class SampleTests
{
    private const string Inspector = "Inês Falcão";

    public static LeakTestSheet Decay() =>
        new()
        {
            Reference = "LT-0311",
            Method = "pressure decay, temperature compensated",
            Inspector = Inspector,
            TestedAt = SampleTraveler.At(16, 10, 12),
            Particulars =
            [
                new("Medium", "dry nitrogen"),
                new("Test volume", "4.11 l ± 0.02 l"),
                new("Gauge", "PG-14, class 0.05, due 2031-11-02"),
                new("Thermometer", "TH-03, ± 0.05 °C"),
                new("Leak rate", "(1.1 ± 2.6) × 10⁻⁵ Pa·m³/s"),
                new("Limit", "≤ 1.0 × 10⁻⁴ Pa·m³/s"),
            ],
            Readings =
            [
                Reading(0, 6.0214, 20.31, "valve closed"),
                Reading(10, 6.0209, 20.29, null),
                Reading(20, 6.0203, 20.26, null),
                Reading(30, 6.0201, 20.25, "end of hold"),
            ],
            Verdict = SampleTraveler.Passed,
            Explanation =
                "The compensated loss is 0.6 mbar in 30 min; leak rate plus uncertainty stays below the limit.",
        };

    public static LeakTestSheet Bubbles() =>
        new()
        {
            Reference = "LT-0318",
            Method = "immersion",
            Inspector = Inspector,
            TestedAt = SampleTraveler.At(20, 15, 20),
            Particulars =
            [
                new("Medium", "dry nitrogen in water, 21 °C"),
                new("Pressure", "6.0 bar gauge"),
                new("Immersed", "15 min"),
                new("Sensitivity", "about 1 × 10⁻⁵ Pa·m³/s for this observation"),
            ],
            Verdict = new StateMark("undecided", MarkShape.HalfDisc),
            Explanation = "Observation not finished.",
        };

    public static PressureTestSheet Proof() =>
        new()
        {
            Reference = "PT-0207",
            Title = "Pressure test, water,",
            Inspector = Inspector,
            TestedAt = SampleTraveler.At(17, 14, 12),
            Particulars =
            [
                new("Medium", "water with inhibitor, 19 °C"),
                new("Gauges", "PG-21 and PG-22, class 0.25"),
                new("Stored energy", "1.6 kJ in the liquid"),
                new("Stand-off distance", "behind the cell door; pneumatic limits do not apply"),
            ],
            Stages =
            [
                Stage("Hold at operating pressure", 120, 10, 120.4, 120.3),
                Stage("Return to zero", 0, 5, 0, 0),
                Stage("Proof", 180, 15, 180.6, 180.4),
                Stage("Return to zero", 0, 5, 0, 0),
            ],
            Dimensions =
            [
                Dimension("Diameter at mid-length", "168.02", "168.03", "+0.01", "0.08"),
                Dimension("Length over ends", "312.44", "312.45", "+0.01", "0.15"),
            ],
            Chart = Ladder(),
            Verdict = SampleTraveler.Passed,
            Explanation =
                "Both holds lost less than the uncertainty of the gauges; the permanent set is below its limit.",
        };

    public static SectionSheet Section() =>
        new()
        {
            Reference = "SX-0098",
            Title = "Macro section",
            Inspector = Inspector,
            ExaminedAt = SampleTraveler.At(15, 13, 40),
            Particulars =
            [
                new("Specimen", "test plate TP-2031-05-A, 90° from the start"),
                new("Etch", "15 % NaOH, 60 °C"),
                new("Scale", "1 px = 4.27 µm, from a stage graticule"),
            ],
            Measurements =
            [
                Measured("Hook height, advancing side", "mm", "0.12", "≤ 0.30"),
                Measured("Cavity area", "mm²", "0.00", "0"),
                Measured("Penetration", "mm", "4.96", "≥ 4.90"),
            ],
            Photographs =
            [
                new Photograph(
                    SamplePictures.Section(640, 300),
                    "Macro photograph of pass 1 and pass 2, etched, advancing sides facing each other.",
                    "Etched section with two overlapping basin-shaped nuggets in a plate."
                ),
            ],
            Verdict = SampleTraveler.Passed,
        };

    private static PressureLadderPlot Ladder() =>
        new()
        {
            Stages =
            [
                LadderStage("operating", 120, 0, 4, 14),
                LadderStage("zero", 0, 14, 17, 22),
                LadderStage("proof", 180, 22, 29, 44),
                LadderStage("zero", 0, 44, 49, 54),
            ],
            Readings =
            [
                Gauge(4, 120.4),
                Gauge(9, 120.3),
                Gauge(14, 120.3),
                Gauge(18, 0),
                Gauge(29, 180.6),
                Gauge(36, 180.5),
                Gauge(44, 180.4),
                Gauge(50, 0),
            ],
            Levels = [new PressureLevel("MEOP", Pressure.FromBar(120))],
        };

    private static LadderStage LadderStage(
        string name,
        double bar,
        int begins,
        int hold,
        int ends
    ) =>
        new(
            name,
            Pressure.FromBar(bar),
            TimeSpan.FromMinutes(begins),
            TimeSpan.FromMinutes(hold),
            TimeSpan.FromMinutes(ends)
        );

    private static LadderReading Gauge(double minutes, double bar) =>
        new(TimeSpan.FromMinutes(minutes), Pressure.FromBar(bar));

    private static LeakReadingLine Reading(
        int minutes,
        double bar,
        double celsius,
        string? remark
    ) =>
        new(
            TimeSpan.FromMinutes(minutes),
            Pressure.FromBar(bar),
            Temperature.FromDegreesCelsius(celsius)
        )
        {
            Remark = remark,
        };

    private static PressureStageLine Stage(
        string name,
        double bar,
        int minutes,
        double start,
        double end
    ) =>
        new(name, Pressure.FromBar(bar))
        {
            Hold = TimeSpan.FromMinutes(minutes),
            AtStart = Pressure.FromBar(start),
            AtEnd = Pressure.FromBar(end),
            Temperature = Temperature.FromDegreesCelsius(19.1),
            Verdict = SampleTraveler.Passed,
        };

    private static DimensionLine Dimension(
        string name,
        string before,
        string after,
        string change,
        string limit
    ) =>
        new(name, "mm")
        {
            Before = before,
            After = after,
            Change = change,
            Limit = limit,
            Verdict = SampleTraveler.Passed,
        };

    private static MeasurementLine Measured(
        string name,
        string unit,
        string measured,
        string limit
    ) =>
        new(name, unit)
        {
            Measured = measured,
            Limit = limit,
            Verdict = SampleTraveler.Passed,
        };
}
