using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;

namespace WeldTrace.TestSupport.Records;

/// <summary>Tests of the vessel of a <see cref="SampleShop"/>, with readings of a known verdict.</summary>
public static partial class SampleTests
{
    /// <summary>How the gauge of the pressure test is set up: 0.01 bar, 0.1 K, 0.005 mm.</summary>
    public static PressureSetUp SetUp { get; } =
        new(
            "G-7",
            new Measured("0.01", "bar"),
            "T-2",
            new Measured("0.1", "K"),
            new Measured("1013", "mbar"),
            "outer diameter at mid-length",
            new Measured("130.000", "mm"),
            new Measured("0.005", "mm"),
            true
        );

    /// <summary>Certificates for every method.</summary>
    public static ExaminerFacts Examiner { get; } =
        new(
            SampleCertificates.AllMethods(SamplePeople.Entered("Emre Kaya", Role.Inspector)),
            SampleTime.Day
        );

    /// <summary>A gauge to 20 bar, a thermometer and a caliper, each calibrated and typed into its field.</summary>
    public static IReadOnlyList<TypedInstrument> Typed { get; } =
    [
        Of(LeakTest.Gauge, SampleInstruments.Gauge("G-7")),
        Of(
            LeakTest.Thermometer,
            SampleInstruments.Calibrated("T-2", InstrumentKind.Temperature, "°C")
        ),
        Of(PressureTest.DimensionInstrument, SampleInstruments.Caliper()),
        Of(SectionExamination.Instrument, SampleInstruments.Caliper()),
    ];

    public static TestFacts Facts(
        SampleShop shop,
        int sequence,
        params IReadOnlyList<TestRecord> unsigned
    )
    {
        ArgumentNullException.ThrowIfNull(shop);
        return new(shop.Vessel, shop.Vessel.Step(sequence)!, shop.Design, shop.Findings)
        {
            Unsigned = unsigned,
            Examiner = Examiner,
            Typed = Typed,
            CautionsRead = true,
        };
    }

    /// <summary>A day at 2 bar with one reading at each end, in 4 l against 1E-5 Pa·m³/s: that limit is a fall of 2.16 mbar.</summary>
    public static DecayObservation Decay(
        string endBar,
        string gaugeMillibar = "0.1",
        int seconds = 86_400
    ) =>
        new(
            [
                new LeakReading(0, new Measured("2.00000", "bar"), new Measured("20.0", "°C")),
                new LeakReading(seconds, new Measured(endBar, "bar"), new Measured("20.0", "°C")),
            ],
            new Measured("1013", "mbar"),
            new Measured(gaugeMillibar, "mbar"),
            new Measured("0", "K"),
            new Measured("1", "%"),
            "G-4, T-2"
        );

    /// <summary>A fall of 0.2 mbar: passes.</summary>
    public static DecayObservation Tight { get; } = Decay("1.99980");

    /// <summary>A fall of 2.1 mbar, known to about 0.3 mbar: undecided.</summary>
    public static DecayObservation Doubtful { get; } = Decay("1.99790");

    /// <summary>A fall of 20 mbar: fails.</summary>
    public static DecayObservation Leaking { get; } = Decay("1.98000");

    public static Outcome<LeakTest> RecordLeak(
        SampleShop shop,
        DecayObservation seen,
        Actor? actor = null,
        params IReadOnlyList<TestRecord> unsigned
    )
    {
        ArgumentNullException.ThrowIfNull(shop);
        var at = shop.Now;
        return LeakTest.RecordDecay(
            Guid.CreateVersion7(at),
            Facts(shop, 30, unsigned),
            seen,
            null,
            actor ?? SamplePeople.Inspector,
            at
        );
    }

    public static Outcome<SignedTest> Sign(SampleShop shop, TestRecord test, Actor? actor = null)
    {
        ArgumentNullException.ThrowIfNull(shop);
        ArgumentNullException.ThrowIfNull(test);
        var signed = test.Sign(
            shop.Vessel,
            shop.WeldedBy,
            Examiner,
            actor ?? SamplePeople.Inspector,
            shop.Now
        );
        if (signed.Value?.Finding is { } finding)
        {
            finding.GiveNumber(shop.Findings.Count + 1);
            shop.Findings.Add(finding);
        }

        return signed;
    }

    /// <param name="shop">Shop.</param>
    /// <param name="setUp">Set-up; <see cref="SetUp"/> when null.</param>
    /// <param name="wideGauge">Whether the gauge goes to 60 bar instead of 20.</param>
    public static Outcome<PressureTest> BeginPressure(
        SampleShop shop,
        PressureSetUp? setUp = null,
        bool wideGauge = false
    )
    {
        ArgumentNullException.ThrowIfNull(shop);
        var at = shop.Now;
        IEnumerable<TypedInstrument> others =
        [
            .. wideGauge
                ? [Of(LeakTest.Gauge, SampleInstruments.Gauge("G-9", "60"))]
                : Array.Empty<TypedInstrument>(),
            .. setUp is { IsStrain: true }
                ?
                [
                    Of(
                        PressureTest.DimensionInstrument,
                        SampleInstruments.Calibrated("SA-1", InstrumentKind.Other, "µm/m")
                    ),
                ]
                : Array.Empty<TypedInstrument>(),
        ];
        var facts = Facts(shop, 40);
        return PressureTest.Begin(
            Guid.CreateVersion7(at),
            facts with
            {
                Typed = [.. others, .. Typed.ExceptBy(others.Select(t => t.Field), t => t.Field)],
            },
            setUp ?? SetUp,
            null,
            SamplePeople.Inspector,
            at
        );
    }

    public static Outcome RecordStage(
        SampleShop shop,
        PressureTest test,
        int number,
        StageReading reading
    )
    {
        ArgumentNullException.ThrowIfNull(shop);
        ArgumentNullException.ThrowIfNull(test);
        return test.RecordStage(number, reading, shop.Design, SamplePeople.Inspector, shop.Now);
    }

    /// <summary>A hold between two gauge pressures at 20 °C.</summary>
    public static StageReading Hold(string startBar, string endBar, int seconds = 600) =>
        new(
            new Measured(startBar, "bar"),
            new Measured("20.0", "°C"),
            new Measured(endBar, "bar"),
            new Measured("20.0", "°C"),
            seconds,
            null
        );

    /// <summary>The dimension after the return to zero.</summary>
    public static StageReading Back(string millimetres) =>
        new(null, null, null, null, 0, new Measured(millimetres, "mm"));

    private static TypedInstrument Of(string field, Instrument instrument) =>
        new(field, instrument.Mark, instrument);
}
