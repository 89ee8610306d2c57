using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;

namespace WeldTrace.Domain.Qualification;

/// <summary>Tests of a qualification.</summary>
public enum TestKind
{
    /// <summary>Visual examination.</summary>
    Visual,

    /// <summary>Penetrant testing.</summary>
    Penetrant,

    /// <summary>Radiographic testing.</summary>
    Radiographic,

    /// <summary>Ultrasonic testing.</summary>
    Ultrasonic,

    /// <summary>Tensile test across the weld.</summary>
    TransverseTensile,

    /// <summary>Bend test with the root in tension.</summary>
    RootBend,

    /// <summary>Bend test with the face in tension.</summary>
    FaceBend,

    /// <summary>Bend test of a slice across the thickness.</summary>
    SideBend,

    /// <summary>Macroscopic section.</summary>
    MacroSection,

    /// <summary>Microscopic section.</summary>
    MicroSection,

    /// <summary>Hardness traverse.</summary>
    Hardness,

    /// <summary>Leak test.</summary>
    Leak,
}

/// <summary>What each kind of test needs. Allowances along the weld are this program's own choice (common practice, no source).</summary>
/// <param name="Kind">Kind.</param>
/// <param name="Word">The trade's word, as the tables of the extent of testing have it.</param>
/// <param name="Method">Method that the tester is certified for.</param>
/// <param name="Standard">Usual method standard; the person enters it with its edition.</param>
/// <param name="AllowanceMillimetres">Length of weld that a specimen takes; 0 when the whole weld is examined.</param>
/// <param name="Instrument">Kind of instrument that supplies the values; null when none does.</param>
public sealed record TestKindFacts(
    TestKind Kind,
    string Word,
    ExaminationMethod Method,
    string Standard,
    int AllowanceMillimetres,
    InstrumentKind? Instrument
);

/// <summary>The facts of each kind of test.</summary>
public static class TestKinds
{
    /// <summary>Word of the extent tables for one volumetric method or the other.</summary>
    public const string Volumetric = "radiographic or ultrasonic";

    private static readonly TestKindFacts[] Known =
    [
        new(TestKind.Visual, "visual", ExaminationMethod.Visual, "ISO 17637", 0, null),
        new(TestKind.Penetrant, "penetrant", ExaminationMethod.Penetrant, "ISO 3452-1", 0, null),
        new(
            TestKind.Radiographic,
            "radiographic",
            ExaminationMethod.Radiographic,
            "ISO 17636-2",
            0,
            null
        ),
        new(TestKind.Ultrasonic, "ultrasonic", ExaminationMethod.Ultrasonic, "ISO 17640", 0, null),
        new(
            TestKind.TransverseTensile,
            "transverse tensile",
            ExaminationMethod.Mechanical,
            "ISO 4136",
            50,
            InstrumentKind.Mechanical
        ),
        Bend(TestKind.RootBend, "root bend"),
        Bend(TestKind.FaceBend, "face bend"),
        Bend(TestKind.SideBend, "side bend"),
        Section(TestKind.MacroSection, "macro section"),
        Section(TestKind.MicroSection, "micro section"),
        new(
            TestKind.Hardness,
            "hardness",
            ExaminationMethod.Mechanical,
            "ISO 9015-1",
            20,
            InstrumentKind.Mechanical
        ),
        new(TestKind.Leak, "leak", ExaminationMethod.Leak, "ISO 20485", 0, InstrumentKind.Leak),
    ];

    /// <summary>The facts of a kind.</summary>
    public static TestKindFacts Of(TestKind kind) => Known.First(k => k.Kind == kind);

    /// <summary>The kind that a word of the extent tables names; for a volumetric test the chosen method.</summary>
    /// <param name="word">One of <see cref="Limits.LimitSchema.Tests"/>.</param>
    /// <param name="volumetric">Radiographic or ultrasonic.</param>
    public static TestKind Named(string word, TestKind volumetric) =>
        word == Volumetric ? volumetric : Known.First(k => k.Word == word).Kind;

    private static TestKindFacts Bend(TestKind kind, string word) =>
        new(kind, word, ExaminationMethod.Mechanical, "ISO 5173", 40, InstrumentKind.Mechanical);

    private static TestKindFacts Section(TestKind kind, string word) =>
        new(kind, word, ExaminationMethod.Macroscopic, "ISO 17639", 20, InstrumentKind.Length);
}
