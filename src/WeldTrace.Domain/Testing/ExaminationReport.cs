using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Domain.Testing;

/// <summary>How a weld was looked at (ISO 17637:2003, 2: at least 350 lx, the eye within 600 mm and at 30° or more).</summary>
/// <param name="Illuminance">Light on the surface, in lx.</param>
/// <param name="Distance">Distance of the eye, in mm.</param>
/// <param name="Angle">Angle of the eye to the surface, in degrees.</param>
public sealed record ViewingConditions(Measured Illuminance, Measured Distance, Measured Angle)
{
    private const double LeastLux = 350;
    private const double MostMillimetres = 600;
    private const double LeastDegrees = 30;

    /// <summary>What the standard asks for and these conditions don't give; empty when they do.</summary>
    public IReadOnlyList<string> Short =>
        [
            .. Illuminance.InUnit() < LeastLux
                ? ["less light than the 350 lx of ISO 17637"]
                : (string[])[],
            .. Distance.InUnit() > MostMillimetres
                ? ["farther away than the 600 mm of ISO 17637"]
                : (string[])[],
            .. Angle.InUnit() < LeastDegrees ? ["flatter than the 30° of ISO 17637"] : (string[])[],
        ];

    internal void Check(Checks checks)
    {
        Reading.Between(checks, Illuminance, 1, 200000, "Light", nameof(Illuminance));
        Reading.Between(checks, Distance, 1, 10000, "Distance of the eye", nameof(Distance));
        Reading.Between(checks, Angle, 1, 90, "Angle of the eye", nameof(Angle));
    }
}

/// <summary>A flaw that an examination found.</summary>
/// <param name="JointCode">Weld.</param>
/// <param name="Angle">Angle from the joint's reference mark in degrees, clockwise as seen from the shoulder side.</param>
/// <param name="What">What it is, in the words of the trade.</param>
/// <param name="Size">Its length or diameter, in mm.</param>
/// <param name="IsCrackLike">Whether it is like a crack; then it is listed and rejected whatever its size.</param>
/// <param name="IsRejectable">Whether it lies beyond the acceptance level.</param>
public sealed record Flaw(
    string JointCode,
    Measured Angle,
    string What,
    Measured Size,
    bool IsCrackLike,
    bool IsRejectable
)
{
    /// <summary>The flaw in words.</summary>
    public string Text =>
        $"{What}, {Size} at {JointCode}, {Angle}{(IsCrackLike ? ", like a crack" : "")}{(IsRejectable || IsCrackLike ? ", rejected" : ", within the level")}";
}

/// <summary>What an examination without readings looked at and found: visual, dimensional or other NDT (NASA-STD-5009C NER 65, 66).</summary>
/// <param name="Method">Method.</param>
/// <param name="MethodStandard">Method standard with its edition.</param>
/// <param name="Acceptance">Acceptance standard with edition and level; a method standard sets no limits.</param>
/// <param name="Procedure">Number of the written procedure; may be empty.</param>
/// <param name="Viewing">How it was looked at; null for other methods than visual.</param>
/// <param name="Conditions">Surface, aids, products, dwell or source: whatever the method asks to be recorded.</param>
/// <param name="Tested">What was examined, exactly.</param>
/// <param name="NotTested">What was not, and why; "nothing" when all was.</param>
/// <param name="Flaws">Every rejectable flaw, and every crack-like one whatever its size.</param>
public sealed record ExaminationReport(
    PlannedExamination Method,
    string MethodStandard,
    string Acceptance,
    string Procedure,
    ViewingConditions? Viewing,
    string Conditions,
    string Tested,
    string NotTested,
    IReadOnlyList<Flaw> Flaws
)
{
    /// <summary>What was measured with: light meter, gauge, probe; null when nothing was, or it was not kept then.</summary>
    public IReadOnlyList<UsedInstrument>? Instruments { get; init; }

    /// <summary>Methods that are recorded in this way.</summary>
    public static IReadOnlyList<PlannedExamination> Methods { get; } =
    [
        PlannedExamination.Visual,
        PlannedExamination.Dimensional,
        PlannedExamination.Penetrant,
        PlannedExamination.Radiographic,
        PlannedExamination.Ultrasonic,
    ];

    /// <summary>Flaws on which the weld is rejected.</summary>
    public IReadOnlyList<Flaw> Rejected => [.. Flaws.Where(f => f.IsRejectable || f.IsCrackLike)];

    /// <summary>The report in a sentence or two.</summary>
    public string Sentence =>
        string.Join(
            ' ',
            [
                $"{Title}, {MethodStandard}, to {Acceptance}.",
                $"Examined: {Tested}. Not examined: {NotTested}.",
                .. Viewing is { } seen
                    ?
                    [
                        $"Light {seen.Illuminance}, eye at {seen.Distance} and {seen.Angle}{(seen.Short.Count == 0 ? "" : $" ({string.Join("; ", seen.Short)})")}.",
                    ]
                    : (string[])[],
                $"Surface, aids and products: {Conditions.TrimEnd('.')}.",
                Flaws.Count == 0
                    ? "No rejectable and no crack-like flaw."
                    : $"Flaws: {string.Join("; ", Flaws.Select(f => f.Text))}.",
            ]
        );

    /// <summary>The certificate that whoever examines needs.</summary>
    public ExaminationMethod Certified =>
        Method switch
        {
            PlannedExamination.Penetrant => ExaminationMethod.Penetrant,
            PlannedExamination.Radiographic => ExaminationMethod.Radiographic,
            PlannedExamination.Ultrasonic => ExaminationMethod.Ultrasonic,
            _ => ExaminationMethod.Visual,
        };

    /// <summary>The method, as a heading.</summary>
    public string Title =>
        string.Concat(
            ExaminationPlan.Word(Method)[..1].ToUpperInvariant(),
            ExaminationPlan.Word(Method)[1..],
            " examination"
        );

    internal void Check(Checks checks, DesignContent design)
    {
        const int Most = TestRecord.LongestText;
        checks
            .That(
                Methods.Contains(Method),
                "method",
                $"A {ExaminationPlan.Word(Method)} has readings of its own; record it at its step.",
                nameof(Method)
            )
            .Text(
                MethodStandard,
                Most,
                "Name the method standard with its edition",
                nameof(MethodStandard)
            )
            .Text(
                Acceptance,
                Most,
                "Name the acceptance standard with edition and level; a method standard sets no limits",
                nameof(Acceptance)
            )
            .Text(
                Conditions,
                Most,
                "Say how it was examined: surface, aids, products",
                nameof(Conditions)
            )
            .Text(Tested, Most, "Say what was examined", nameof(Tested))
            .Text(
                NotTested,
                Most,
                "Say what was not examined; 'nothing' when all was",
                nameof(NotTested)
            )
            .That(
                Procedure.Length <= Most,
                "procedure",
                $"Keep the written procedure within {Most} characters.",
                nameof(Procedure)
            );
        if (Method == PlannedExamination.Visual)
        {
            checks.That(
                Viewing is not null,
                "viewing",
                "Give light, distance and angle of the visual examination.",
                nameof(ViewingConditions.Illuminance)
            );
            Viewing?.Check(checks);
        }

        foreach (var (flaw, row) in Flaws.Select((f, i) => (f, i + 1)))
        {
            CheckFlaw(checks, flaw, $"Flaw {row}", design);
        }
    }

    private static void CheckFlaw(Checks checks, Flaw flaw, string where, DesignContent design)
    {
        checks
            .Text(flaw.What, 80, $"{where}: say what it is", nameof(Flaws))
            .That(
                design.Joint(flaw.JointCode) is not null,
                "joint",
                $"{where}: the design has no joint '{flaw.JointCode}'.",
                nameof(Flaws)
            );
        Reading.Between(checks, flaw.Angle, 0, 360, $"{where}: angle", nameof(Flaws));
        Reading.Between(checks, flaw.Size, 0.01, 10000, $"{where}: size", nameof(Flaws));
    }
}

/// <summary>What follows from a signed-off step.</summary>
/// <param name="SignOff">The sign-off.</param>
/// <param name="Finding">The finding of an examination that rejected the weld; null otherwise.</param>
public sealed record SignedOffStep(StepSignOff SignOff, Findings.Finding? Finding);
