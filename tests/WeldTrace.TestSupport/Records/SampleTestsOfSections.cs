using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Sections;

namespace WeldTrace.TestSupport.Records;

// Sections, with measurements of a known verdict.
public static partial class SampleTests
{
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
