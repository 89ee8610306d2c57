using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;

namespace WeldTrace.Domain.VesselDesigns;

/// <summary>Methods by which welds and vessels are examined.</summary>
public enum PlannedExamination
{
    /// <summary>Visual.</summary>
    Visual,

    /// <summary>Dimensions.</summary>
    Dimensional,

    /// <summary>Penetrant: the surface.</summary>
    Penetrant,

    /// <summary>Radiographic: the volume.</summary>
    Radiographic,

    /// <summary>Ultrasonic: the volume.</summary>
    Ultrasonic,

    /// <summary>Leak test, a test under service conditions.</summary>
    Leak,

    /// <summary>Pressure test, a test under service conditions.</summary>
    Pressure,

    /// <summary>Macroscopic or microscopic section.</summary>
    Section,
}

/// <summary>One line of the test plan.</summary>
/// <param name="JointCode">Weld; null for the whole vessel.</param>
/// <param name="Method">Method.</param>
/// <param name="ExtentPercent">Part of the weld, or of the vessels, that is examined; above 0, at most 100.</param>
/// <param name="MethodStandard">How it is done: standard with edition.</param>
/// <param name="AcceptanceStandard">What it is judged by: standard or specification with edition.</param>
/// <param name="Level">Acceptance level, or the place of the limit.</param>
/// <param name="Replaces">Method in whose place it is done; null when in none.</param>
/// <param name="Clause">Clause of the design specification that permits the replacement; null without one.</param>
public sealed record PlannedMethod(
    string? JointCode,
    PlannedExamination Method,
    decimal ExtentPercent,
    string MethodStandard,
    string AcceptanceStandard,
    string Level,
    PlannedExamination? Replaces = null,
    string? Clause = null
);

/// <summary>Which examinations a design must plan.</summary>
public static class ExaminationPlan
{
    /// <summary>Longest standard, level or clause.</summary>
    public const int LongestText = 120;

    /// <summary>Where it stands that each planned examination is made and recorded.</summary>
    internal const string EachMethodSource = "ISO 25239-5:2020, 4.12.4";

    private const string SubstitutionSource = "ISO 25239-5:2020, 4.12.4.4 and 4.12.4.6";

    /// <summary>Where the least examinations of a design stand.</summary>
    public static string LeastSource(DesignContent? content) =>
        content?.Least?.By is { } by
            ? $"{by.Source} ({by.Label})"
            : ShippedLimits.LeastExaminations.Source.ToString();

    /// <summary>The word for a method.</summary>
    public static string Word(PlannedExamination method) =>
        method switch
        {
            PlannedExamination.Visual => "visual",
            PlannedExamination.Dimensional => "dimensional",
            PlannedExamination.Penetrant => "penetrant",
            PlannedExamination.Radiographic => "radiographic",
            PlannedExamination.Ultrasonic => "ultrasonic",
            PlannedExamination.Leak => "leak test",
            PlannedExamination.Pressure => "pressure test",
            PlannedExamination.Section => "section",
            _ => throw new ArgumentOutOfRangeException(nameof(method), method, "Unknown method."),
        };

    /// <summary>Least examinations of a weld that the plan doesn't hold; empty for a weld without class.</summary>
    /// <param name="content">Design.</param>
    /// <param name="joint">One of its joints.</param>
    public static IReadOnlyList<LeastExamination> Missing(DesignContent content, Joint joint)
    {
        ArgumentNullException.ThrowIfNull(content);
        ArgumentNullException.ThrowIfNull(joint);
        var planned = (content.Examinations ?? [])
            .Where(m => m.JointCode is null || m.JointCode == joint.Code)
            .ToList();
        return
        [
            .. (content.Least?.Rows ?? LeastExaminations.Shipped).Where(l =>
                l.Class == joint.Class
                && !planned.Any(m =>
                    l.AnyOf.Contains(m.Method) || l.AnyOf.Any(one => m.Replaces == one)
                )
            ),
        ];
    }

    /// <summary>
    /// Methods by which the whole of every vessel is examined in a step of its own, signed without readings, in the order of the plan.
    /// Leak and pressure tests and sections have their own kinds of step.
    /// </summary>
    /// <param name="content">Design.</param>
    public static IReadOnlyList<PlannedExamination> OfEachVessel(DesignContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        return
        [
            .. (content.Examinations ?? [])
                .Where(m => m.ExtentPercent == 100)
                .Select(m => m.Method)
                .Where(ExaminationReport.Methods.Contains)
                .Distinct(),
        ];
    }

    internal static void Check(Checks checks, DesignContent content)
    {
        CheckSteps(checks, content);
        foreach (var (method, row) in (content.Examinations ?? []).Select((m, i) => (m, i + 1)))
        {
            CheckOne(checks, content, method, $"Test plan, row {row}");
        }

        foreach (var joint in content.Joints.Where(j => j.Class is not null))
        {
            foreach (var missing in Missing(content, joint))
            {
                checks.That(
                    false,
                    "examination",
                    $"Joint {joint.Code} is of class {joint.Class} and needs a {missing.What} examination ({string.Join(" or ", missing.AnyOf.Select(Word))}); plan it, or name the examination that takes its place.",
                    nameof(DesignContent.Examinations),
                    LeastSource(content)
                );
            }
        }
    }

    private static void CheckSteps(Checks checks, DesignContent content)
    {
        var methods = OfEachVessel(content);
        var steps = content.Route.Count(s => s.Kind == StepKind.Examination && s.OnlyFor is null);
        checks.That(
            steps >= methods.Count,
            "route",
            $"The test plan examines every vessel by {methods.Count} methods ({string.Join(", ", methods.Select(Word))}); the route has {steps} steps of examination. Give each method a step.",
            nameof(DesignContent.Route),
            EachMethodSource
        );
    }

    private static void CheckOne(
        Checks checks,
        DesignContent content,
        PlannedMethod method,
        string where
    ) =>
        checks
            .That(
                method.JointCode is null || content.Joint(method.JointCode) is not null,
                "examination",
                $"{where}: the design has no joint '{method.JointCode}'. Leave the joint empty for the whole vessel.",
                nameof(DesignContent.Examinations)
            )
            .That(
                method.ExtentPercent is > 0 and <= 100,
                "extent",
                $"{where}: give an extent above 0 and at most 100 %.",
                nameof(DesignContent.Examinations)
            )
            .Text(
                method.MethodStandard,
                LongestText,
                $"{where}: name the method standard with its edition",
                nameof(DesignContent.Examinations)
            )
            .Text(
                method.AcceptanceStandard,
                LongestText,
                $"{where}: name the acceptance standard with its edition; a method standard sets no limits",
                nameof(DesignContent.Examinations)
            )
            .Text(
                method.Level,
                LongestText,
                $"{where}: give the acceptance level, or say where the limit stands",
                nameof(DesignContent.Examinations)
            )
            .That(
                !NeedsClause(method) || !string.IsNullOrWhiteSpace(method.Clause),
                "substitution",
                $"{where}: {Word(method.Method)} in place of {Word(method.Replaces ?? method.Method)} needs the clause of the design specification that permits it.",
                nameof(DesignContent.Examinations),
                SubstitutionSource
            )
            .That(
                method.Replaces is not { } replaced || MayReplace(method.Method, replaced),
                "substitution",
                $"{where}: {Word(method.Method)} can't take the place of {Word(method.Replaces ?? method.Method)}; only ultrasonic for radiographic, or a test under service conditions for penetrant, radiographic or ultrasonic.",
                nameof(DesignContent.Examinations),
                SubstitutionSource
            );

    private static bool NeedsClause(PlannedMethod method) => method.Replaces is not null;

    private static bool MayReplace(PlannedExamination method, PlannedExamination replaced) =>
        (method, replaced) switch
        {
            (PlannedExamination.Ultrasonic, PlannedExamination.Radiographic) => true,
            (
                PlannedExamination.Leak
                    or PlannedExamination.Pressure,
                PlannedExamination.Penetrant
                    or PlannedExamination.Radiographic
                    or PlannedExamination.Ultrasonic
            ) => true,
            _ => false,
        };
}
