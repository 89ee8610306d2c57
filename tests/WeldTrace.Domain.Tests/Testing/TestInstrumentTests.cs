using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Testing;

/// <summary>F13 and F19 at the tests of a vessel: what measures is calibrated and suits, and who tests is certified.</summary>
public sealed class TestInstrumentTests
{
    /// <summary>Test, field of the instrument, and what stands in it; the sample gauge goes to 20 bar, the proof to 18 bar.</summary>
    public static TheoryData<string, string, string, string> Unsuited =>
        new()
        {
            { "leak", LeakTest.Gauge, "nothing", "Scan or type the mark" },
            { "leak", LeakTest.Gauge, "unknown", "No instrument is marked 'X-1'" },
            { "leak", LeakTest.Gauge, "thermometer", "measures temperature, not pressure" },
            { "leak", LeakTest.Gauge, "out of date", "ran out on" },
            { "leak", LeakTest.Gauge, "too coarse", "not below a tenth" },
            { "leak", LeakTest.Thermometer, "nothing", "Scan or type the mark" },
            { "leak", LeakTest.Thermometer, "gauge", "measures pressure, not temperature" },
            { "pressure", nameof(PressureSetUp.Gauge), "nothing", "Scan or type the mark" },
            { "pressure", nameof(PressureSetUp.Gauge), "too small", "must lie within its range" },
            { "pressure", nameof(PressureSetUp.Thermometer), "unknown", "No instrument is marked" },
            { "pressure", PressureTest.DimensionInstrument, "indication", "indication only" },
            { "section", SectionExamination.Instrument, "nothing", "Scan or type the mark" },
            { "section", SectionExamination.Instrument, "gauge", "not length" },
        };

    [Theory]
    [MemberData(nameof(Unsuited))]
    public void Record_WithAnUnsuitedInstrument_NamesItsField(
        string test,
        string field,
        string what,
        string words
    )
    {
        var refusals = Record(test, f => f with { Typed = [.. f.Typed.Select(Put)] });

        var refusal = Assert.Single(refusals);
        Assert.Equal(("F13", field), (refusal.Code, refusal.Field));
        Assert.Contains(words, refusal.Sentence, StringComparison.Ordinal);

        TypedInstrument Put(TypedInstrument typed) =>
            typed.Field == field ? Typed(field, what) : typed;
    }

    [Theory]
    [InlineData("leak", ExaminationMethod.Leak)]
    [InlineData("pressure", ExaminationMethod.Pressure)]
    [InlineData("section", ExaminationMethod.Macroscopic)]
    public void Record_WithoutTheMethodsCertificate_IsRefused(string test, ExaminationMethod method)
    {
        var others = SampleTests
            .Examiner.Certificates.Where(c => c.Text.Examiner!.Method != method)
            .ToList();

        var without = Record(
            test,
            f => f with { Examiner = f.Examiner with { Certificates = others } }
        );
        var expired = Record(
            test,
            f => f with { Examiner = f.Examiner with { Today = SampleTime.Day.AddYears(5) } }
        );

        Assert.Equal("F19", Assert.Single(without).Code);
        Assert.Contains(expired, r => r.Code == "F19");
    }

    [Fact]
    public void Sign_WithoutTheMethodsCertificate_IsRefused()
    {
        var shop = new SampleShop().Reach(30);
        var test = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Tight));

        var signed = test.Sign(
            shop.Vessel,
            shop.WeldedBy,
            new ExaminerFacts([], SampleTime.Day),
            SamplePeople.Inspector,
            shop.Now
        );

        Assert.Equal("F19", Assert.Single(signed.Refusals).Code);
        Assert.False(test.IsSealed);
    }

    [Fact]
    public void Record_KeepsWhatItWasMeasuredWith()
    {
        var shop = new SampleShop().Reach(30);

        var test = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Tight));

        Assert.Equal(["G-7", "T-2"], test.Instruments!.Select(i => i.Mark));
        Assert.Equal("G-7, T-2", test.Decay!.Instruments);
        Assert.All(
            test.Instruments!,
            i => Assert.Equal(SampleTime.Day.AddYears(1), i.CalibratedUntil)
        );
    }

    /// <summary>A visual examination is signed by somebody certified for it; a preparation needs no such certificate.</summary>
    [Theory]
    [InlineData(StepKind.Examination, true)]
    [InlineData(StepKind.Preparation, false)]
    [InlineData(StepKind.Acceptance, false)]
    public void SignOff_OfAnExamination_AsksForTheVisualCertificate(StepKind kind, bool isAsked)
    {
        var shop = new SampleShop();
        var facts = SampleTests.Facts(shop, 10) with
        {
            Examiner = new ExaminerFacts([], SampleTime.Day),
        };

        var refusals = StepSignOff.RefusalsBefore(
            facts with
            {
                Step = facts.Step with { Kind = kind },
            },
            [],
            SamplePeople.Inspector
        );

        Assert.Equal(isAsked, refusals.Any(r => r.Code == "F19"));
    }

    private static IReadOnlyList<Refusal> Record(string test, Func<TestFacts, TestFacts> change)
    {
        var shop = new SampleShop();
        var at = SampleTime.Start;
        return test switch
        {
            "leak" => LeakTest
                .RecordDecay(
                    Guid.CreateVersion7(at),
                    change(SampleTests.Facts(shop.Reach(30), 30)),
                    SampleTests.Tight,
                    null,
                    SamplePeople.Inspector,
                    at
                )
                .Refusals,
            "pressure" => PressureTest
                .Begin(
                    Guid.CreateVersion7(at),
                    change(SampleTests.Facts(shop.Reach(40), 40)),
                    SampleTests.SetUp,
                    null,
                    SamplePeople.Inspector,
                    at
                )
                .Refusals,
            _ => SampleTests
                .RecordSection(shop.Reach(50), new SampleTests.Hook(100), change)
                .Refusals,
        };
    }

    private static TypedInstrument Typed(string field, string what)
    {
        var instrument = what switch
        {
            "thermometer" => SampleInstruments.Calibrated("X-1", InstrumentKind.Temperature, "°C"),
            "gauge" => SampleInstruments.Gauge("X-1"),
            "too coarse" => SampleInstruments.Calibrated("X-1", InstrumentKind.Pressure, "bar"),
            "too small" => SampleInstruments.Gauge("X-1", "16"),
            "out of date" => SampleInstruments.Gauge("X-1", calibratedMonthsAgo: 12),
            "indication" => SampleInstruments.Caliper("X-1", isIndicationOnly: true),
            _ => null,
        };
        return new(field, what == "nothing" ? " " : "X-1", instrument);
    }
}
