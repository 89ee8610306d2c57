using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;

namespace WeldTrace.Web.Demo;

/// <summary>The invented instruments of machine and test room, each calibrated.</summary>
internal sealed class DemoInstruments
{
    private DemoInstruments(DemoCast cast, DemoClock clock)
    {
        var at = clock.AfterMinutes(20);
        LoadCell = Make(
            new("LC-1", InstrumentKind.Force, "Load cell of Gantry 1", "kN", "60", "0.1"),
            2
        );
        LeakGauge = Make(
            new("G-12", InstrumentKind.Pressure, "Gauge of the leak stand", "bar", "16", "0.0001"),
            3
        );
        PressureGauge = Make(
            new("G-31", InstrumentKind.Pressure, "Gauge of the test cell", "bar", "100", "0.05"),
            4
        );
        Thermometer = Make(
            new("TH-3", InstrumentKind.Temperature, "Thermometer", "°C", "80", "0.1"),
            10
        );
        All =
        [
            Make(
                new("MS-04", InstrumentKind.Length, "Measuring microscope", "mm", "50", "0.01"),
                2
            ),
            .. Others.Select(o => Make(o, 2)),
            LoadCell,
            LeakGauge,
            PressureGauge,
            Thermometer,
        ];

        Instrument Make(DemoInstrument text, int monthsAgo) =>
            Calibrated(text, monthsAgo, cast, at);
    }

    /// <summary>Watches the axial force; the procedure asks for it.</summary>
    public Instrument LoadCell { get; }

    public Instrument LeakGauge { get; }

    public Instrument PressureGauge { get; }

    /// <summary>Due for calibration soon.</summary>
    public Instrument Thermometer { get; }

    public IReadOnlyList<Instrument> All { get; }

    public IReadOnlyList<TypedInstrument> ForLeaks =>
        [Typed(LeakTest.Gauge, LeakGauge), Typed(LeakTest.Thermometer, Thermometer)];

    public IReadOnlyList<TypedInstrument> ForPressure =>
        [
            Typed(nameof(PressureSetUp.Gauge), PressureGauge),
            Typed(nameof(PressureSetUp.Thermometer), Thermometer),
            Typed(PressureTest.DimensionInstrument, Microscope),
        ];

    public IReadOnlyList<TypedInstrument> ForSections =>
        [Typed(SectionExamination.Instrument, Microscope)];

    private Instrument Microscope => All[0];

    private static TypedInstrument Typed(string field, Instrument instrument) =>
        new(field, instrument.Mark, instrument);

    private static DemoInstrument[] Others { get; } =
    [
        new(
            "LD-02",
            InstrumentKind.Leak,
            "Helium detector with calibrated leak",
            "Pa·m³/s",
            "0.001",
            "0.0000001"
        ),
        new(
            "TM-02",
            InstrumentKind.Mechanical,
            "Tensile and bend testing machine",
            "kN",
            "100",
            "0.05"
        ),
        new("SA-01", InstrumentKind.Other, "Amplifier for strain gauges", "µm/m", "5000", "1"),
        new("HT-01", InstrumentKind.Mechanical, "Hardness tester", "N", "100", "0.1"),
    ];

    public static DemoInstruments Make(DemoCast cast, DemoClock clock) => new(cast, clock);

    private static Instrument Calibrated(
        DemoInstrument text,
        int monthsAgo,
        DemoCast cast,
        DateTimeOffset at
    )
    {
        var today = DateOnly.FromDateTime(at.UtcDateTime);
        var instrument = Instrument
            .Enter(
                new InstrumentText(
                    text.Mark,
                    text.Kind,
                    text.Description,
                    new Measured("0", text.Unit),
                    new Measured(text.Upper, text.Unit),
                    new Measured(text.Step, text.Unit),
                    new Measured(text.Step, text.Unit),
                    12,
                    false
                ),
                cast.Inspector,
                at
            )
            .Must();
        instrument
            .Calibrate(
                today.AddMonths(-monthsAgo),
                "Fjord calibration room",
                $"{text.Mark}-2",
                null,
                new Measured("0", text.Unit),
                today,
                cast.QualityManager,
                at
            )
            .Must();
        return instrument;
    }

    private sealed record DemoInstrument(
        string Mark,
        InstrumentKind Kind,
        string Description,
        string Unit,
        string Upper,
        string Step
    );
}
