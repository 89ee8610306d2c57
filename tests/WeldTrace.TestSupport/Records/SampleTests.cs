using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Sections;

namespace WeldTrace.TestSupport.Records;

/// <summary>Tests of the vessel of a <see cref="SampleShop"/>, with readings of a known verdict.</summary>
public static class SampleTests
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
        var facts = Facts(shop, 40);
        return PressureTest.Begin(
            Guid.CreateVersion7(at),
            wideGauge
                ? facts with
                {
                    Typed =
                    [
                        Of(LeakTest.Gauge, SampleInstruments.Gauge("G-9", "60")),
                        .. Typed.Where(t => t.Field != LeakTest.Gauge),
                    ],
                }
                : facts,
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

    /// <summary>The table by which sections of the samples are judged.</summary>
    public static LimitTable Limits { get; } = NewLimits();

    /// <summary>The same table as a record of its own, to be saved.</summary>
    public static LimitTable NewLimits() =>
        ShippedLimits
            .Missing([], SamplePeople.QualityManager, SampleTime.Start)
            .Single(t => t.Code == ShippedLimits.Imperfections);

    /// <summary>A photograph of 1200 by 800 pixels.</summary>
    public static Photograph Photograph { get; } =
        new(new string('d', 64), "macro.png", "image/png", 1200, 800);

    /// <summary>A pixel of 1 µm, exactly known, and the face along the upper edge.</summary>
    public static PictureSetUp SetUpOfPicture(string pointing = "0") =>
        new(
            null,
            null,
            null,
            null,
            new Measured("1", "µm"),
            new Measured("0", "µm"),
            new Measured(pointing, "px"),
            new FaceLine(new(100, 100), new(1100, 100))
        );

    /// <summary>A photograph that is taken in; nothing is measured on it yet.</summary>
    public static Outcome<SectionExamination> TakeInSection(
        SampleShop shop,
        Func<TestFacts, TestFacts>? change = null
    )
    {
        ArgumentNullException.ThrowIfNull(shop);
        var (at, facts) = (shop.Now, Facts(shop, 50));
        return TakeInSection(change?.Invoke(facts) ?? facts, SamplePeople.Inspector, at);
    }

    /// <summary>A section that is measured and concluded.</summary>
    public static Outcome<SectionExamination> RecordSection(
        SampleShop shop,
        Hook hook,
        Func<TestFacts, TestFacts>? change = null
    )
    {
        ArgumentNullException.ThrowIfNull(shop);
        var (at, facts) = (shop.Now, Facts(shop, 50));
        return Section(change?.Invoke(facts) ?? facts, hook, SamplePeople.Inspector, at);
    }

    /// <summary>A section of J1 at 90 degrees, measured and concluded.</summary>
    public static Outcome<SectionExamination> Section(
        TestFacts facts,
        Hook hook,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(hook);
        var taken = TakeInSection(facts, actor, at);
        if (taken.IsAccepted)
        {
            var section = taken.Value;
            Accept.All(section.SetScale(SetUpOfPicture(hook.Pointing), null, actor, at));
            Accept.All(section.Measure(hook.Entry, Limits, actor, at));
            Accept.All(section.Conclude("As measured.", actor, at));
        }

        return taken;
    }

    private static Outcome<SectionExamination> TakeInSection(
        TestFacts facts,
        Actor actor,
        DateTimeOffset at
    ) =>
        SectionExamination.TakeIn(
            Guid.CreateVersion7(at),
            facts,
            new SectionCut("J1", 1, Angle.FromDegrees(90), "Keller, 15 s", "10×")
            {
                Specimen = "M1",
                Plane = "across the weld",
                IsMicroscopic = false,
            },
            new SectionStandards(
                "ISO 17639",
                "2003",
                "",
                Limits.Reference,
                Length.FromMillimetres(6)
            ),
            Photograph,
            null,
            actor,
            at
        );

    private static TypedInstrument Of(string field, Instrument instrument) =>
        new(field, instrument.Mark, instrument);

    /// <summary>A hook of a height in µm, pointed at to within so many pixels of 1 µm, against 300 µm of the design.</summary>
    public sealed record Hook(int Micrometres, string Pointing = "7")
    {
        public MarkEntry Entry =>
            new(
                PictureShape.Line,
                [new(200, 200), new(200, 200 + Micrometres)],
                Imperfection.Hook,
                null,
                new Measured("0.30", "mm"),
                "DS-10 rev B",
                ""
            );
    }
}
