using System.Globalization;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Demo;

/// <summary>Tests of the demonstration, with invented readings that pass.</summary>
internal sealed class DemoTesting(
    WeldTraceDbContext db,
    DemoInstruments instruments,
    DemoCast cast,
    DemoClock clock
)
{
    private const string Meaning = "I made this test and the readings are as recorded.";

    public async Task LeakAsync(
        TestFacts facts,
        List<Guid> weldedBy,
        CancellationToken cancellation
    )
    {
        facts = facts with { Typed = instruments.ForLeaks, CautionsRead = true };
        var at = clock.AfterMinutes(70);
        var seen = new DecayObservation(
            [
                .. Enumerable
                    .Range(0, 7)
                    .Select(i => new LeakReading(
                        i * 600,
                        Of(10.050 - (i * 0.0002), 4, "bar"),
                        Of(20.10 + (0.01 * (i % 2)), 2, "°C")
                    )),
            ],
            Of(1012, 0, "mbar"),
            Of(0.2, 1, "mbar"),
            Of(0.02, 2, "K"),
            Of(0.5, 1, "%"),
            ""
        );
        var test = LeakTest
            .RecordDecay(Guid.CreateVersion7(at), facts, seen, null, cast.Inspector, at)
            .Must();
        await SignAsync(test, facts, weldedBy, cancellation);
    }

    public async Task PressureAsync(
        TestFacts facts,
        List<Guid> weldedBy,
        CancellationToken cancellation
    )
    {
        facts = facts with { Typed = instruments.ForPressure };
        var at = clock.AfterMinutes(50);
        var setUp = new PressureSetUp(
            "",
            Of(0.05, 2, "bar"),
            "",
            Of(0.1, 1, "K"),
            Of(1012, 0, "mbar"),
            "outer diameter at mid-length",
            Of(170.02, 2, "mm"),
            Of(0.005, 3, "mm"),
            true
        )
        {
            ToBurst = facts.Vessel.Sample?.Kind == SampleKind.Burst ? true : null,
            FurtherPlaces = [new("outer diameter beside J2", Of(170.06, 2, "mm"), null)],
        };
        var test = PressureTest
            .Begin(Guid.CreateVersion7(at), facts, setUp, null, cast.Inspector, at)
            .Must();
        db.Add(test);
        await db.SaveForDemoAsync(cancellation);
        List<StageReading> readings = [.. Ladder];
        if (setUp.ToBurst == true)
        {
            readings.Add(await BurstAsync(facts.Vessel.Serial, cancellation));
        }

        foreach (var (reading, index) in readings.Select((r, i) => (r, i)))
        {
            test.RecordStage(
                    index + 1,
                    reading,
                    facts.Design,
                    cast.Inspector,
                    clock.AfterMinutes(15)
                )
                .Must();
            await db.SaveForDemoAsync(cancellation);
        }

        await SignAsync(test, facts, weldedBy, cancellation);
    }

    private static StageReading[] Ladder =>
        [
            new(
                Of(40.30, 2, "bar"),
                Of(18.4, 1, "°C"),
                Of(40.10, 2, "bar"),
                Of(18.4, 1, "°C"),
                620,
                null
            ),
            new(null, null, null, null, 0, Of(170.03, 2, "mm"))
            {
                FurtherDimensions = [Of(170.07, 2, "mm")],
            },
            new(
                Of(60.40, 2, "bar"),
                Of(18.5, 1, "°C"),
                Of(60.10, 2, "bar"),
                Of(18.5, 1, "°C"),
                320,
                null
            ),
        ];

    // The last figure of the serial sets the samples apart.
    private async Task<StageReading> BurstAsync(string serial, CancellationToken cancellation)
    {
        double[] bars = [93.4, 95.1, 92.6];
        var photograph = await KeepMacroAsync(serial, cancellation);
        return new(null, null, null, null, 0, null)
        {
            Burst = new BurstReading(
                Of(bars[(serial[^1] - '0') % bars.Length], 1, "bar"),
                Of(14, 0, "bar"),
                BurstZone.HeatAffectedRetreating,
                "J2",
                Of(140, 0, "°"),
                "from the heat-affected zone of J2 along the shell, 110 mm, no fragments",
                [photograph]
            ),
        };
    }

    private async Task<Photograph> KeepMacroAsync(string serial, CancellationToken cancellation)
    {
        var (photograph, attachment) = DemoMacro.Make(serial);
        if (await db.Attachments.FindAsync([attachment.Sha256], cancellation) is null)
        {
            db.Add(attachment);
        }

        return photograph;
    }

    public async Task SectionAsync(
        TestFacts facts,
        List<Guid> weldedBy,
        CancellationToken cancellation
    )
    {
        facts = facts with { Typed = instruments.ForSections };
        var at = clock.AfterMinutes(240);
        var photograph = await KeepMacroAsync(facts.Vessel.Serial, cancellation);
        var table = await db.LimitTables.SingleAsync(
            t => t.Code == ShippedLimits.Imperfections && t.SupersededById == null,
            cancellation
        );
        var section = SectionExamination
            .TakeIn(
                Guid.CreateVersion7(at),
                facts,
                new SectionCut(
                    "J1",
                    null,
                    Angle.FromDegrees(120),
                    "Keller's reagent, 20 s",
                    "scale bar 5 mm on the photograph"
                )
                {
                    Specimen = $"{facts.Vessel.Serial}-M1",
                    Plane = "across the weld",
                    IsMicroscopic = false,
                },
                new SectionStandards(
                    "ISO 17639",
                    "2003",
                    "",
                    table.Reference,
                    facts.Design.Content.Joint("J1")!.Thickness
                ),
                photograph,
                null,
                cast.Inspector,
                at
            )
            .Must();
        section.SetScale(DemoMacro.SetUp, null, cast.Inspector, at).Must();
        section.Measure(DemoMacro.Hook, table, cast.Inspector, at).Must();
        section.Measure(DemoMacro.Nugget, table, cast.Inspector, at).Must();
        section.Conclude("Hook on the advancing side, otherwise sound.", cast.Inspector, at).Must();
        await SignAsync(section, facts, weldedBy, cancellation);
    }

    private async Task SignAsync(
        TestRecord test,
        TestFacts facts,
        List<Guid> weldedBy,
        CancellationToken cancellation
    )
    {
        if (db.Entry(test).State == EntityState.Detached)
        {
            db.Add(test);
            await db.SaveForDemoAsync(cancellation);
        }

        var at = clock.AfterMinutes(4);
        var signed = test.Sign(facts.Vessel, weldedBy, facts.Examiner, cast.Inspector, at).Must();
        await db.TakeSampleAsync(test, facts.Vessel, cast.Inspector, at, cancellation);
        db.Add(Signature.Of(test, cast.Inspector, Meaning, at));
        if (signed.Finding is { } finding)
        {
            throw new InvalidOperationException(
                $"The demonstration's test did not pass: {finding.Description}"
            );
        }

        await db.SaveForDemoAsync(cancellation);
    }

    private static Measured Of(double value, int decimals, string unit) =>
        new(value.ToString($"F{decimals}", CultureInfo.InvariantCulture), unit);
}
