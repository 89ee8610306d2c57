using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Findings;

/// <summary>Words about findings for people.</summary>
public static class FindingWords
{
    /// <summary>What a decision does to the vessel, for whoever is about to take it.</summary>
    /// <param name="kind">Decision.</param>
    /// <param name="step">Step at which the finding arose; null when the route no longer has it.</param>
    public static string Consequence(DispositionKind kind, RouteStep? step) =>
        kind switch
        {
            DispositionKind.UseAsIs => step is { State: StepState.Failed }
                ? $"Step {step.Sequence} counts as waived, and the vessel goes on as it is once the finding is closed."
                : "The vessel goes on as it is once the finding is closed.",
            DispositionKind.Rework =>
                $"Step {step?.Sequence} is opened again and done anew, so that it fully conforms, and so are the tests and examinations after it; the finding is closed once the step is done.",
            DispositionKind.Repair =>
                "The place is welded again, as a run of its own through the same gate, by the qualified procedure that you choose, and every test and examination after the weld is done anew by the same methods; the vessel is acceptable without fully conforming. The quality manager decides on it; the review board first when the place was repaired twice, or after a leak or proof test.",
            DispositionKind.Scrap =>
                "The vessel is rejected for ever. Nothing more is recorded on its route; this can't be undone.",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown decision."),
        };

    /// <summary>The word for where a finding comes from.</summary>
    public static string OriginWord(FindingOrigin origin) =>
        origin switch
        {
            FindingOrigin.Excursion => "excursion",
            FindingOrigin.InterruptedRun => "interrupted run",
            FindingOrigin.LeakTest => "leak test",
            FindingOrigin.PressureTest => "pressure test",
            FindingOrigin.Examination => "examination",
            FindingOrigin.Report => "report",
            FindingOrigin.LotSample => "sample of the lot",
            FindingOrigin.Containment => "containment",
            _ => throw new ArgumentOutOfRangeException(nameof(origin), origin, "Unknown origin."),
        };

    /// <summary>The trade's words for a kind of defect.</summary>
    public static string DefectWord(DefectType type) =>
        type switch
        {
            DefectType.Crack => "crack",
            DefectType.Cavity => "cavity",
            DefectType.SurfaceCavity => "surface-breaking cavity",
            DefectType.SolidInclusion => "solid inclusion",
            DefectType.IncompletePenetration => "incomplete penetration",
            DefectType.JointRemnant => "joint remnant",
            DefectType.Hook => "hook",
            DefectType.JointAreaDeformation => "joint area deformation",
            DefectType.Underfill => "underfill",
            DefectType.ToeFlash => "toe flash",
            DefectType.LinearMisalignment => "linear misalignment",
            DefectType.AngularMisalignment => "angular misalignment",
            DefectType.IrregularSurface => "irregular surface",
            DefectType.Multiple => "multiple imperfections",
            DefectType.Leak => "leak",
            DefectType.PressureBehaviour => "growth or loss under pressure",
            DefectType.MechanicalValue => "mechanical value",
            DefectType.Dimension => "dimension",
            DefectType.ParameterExcursion => "parameter outside its window",
            DefectType.Interruption => "interrupted weld",
            DefectType.Material => "material",
            DefectType.Equipment => "instrument, machine or tool",
            DefectType.Documentation => "documentation",
            DefectType.Damage => "handling damage",
            DefectType.Other => "other",
            _ => throw new ArgumentOutOfRangeException(nameof(type), type, "Unknown defect."),
        };

    /// <summary>The words for what vessels have in common.</summary>
    public static string SharedWord(SharedThing thing) =>
        thing switch
        {
            SharedThing.Tool => "same tool",
            SharedThing.Machine => "same machine",
            SharedThing.Procedure => "same procedure revision",
            SharedThing.Operator => "same operator",
            SharedThing.MaterialLot => "same material lot",
            SharedThing.Instrument => "same instrument",
            _ => throw new ArgumentOutOfRangeException(nameof(thing), thing, "Unknown thing."),
        };

    /// <summary>A place on a seam in words.</summary>
    /// <param name="place">Place; null when the finding has none.</param>
    public static string PlaceText(SeamPlace? place)
    {
        if (place is null)
        {
            return "no place on a seam";
        }

        var pass = place.PassNumber is { } number ? $", pass {number}" : "";
        var angle =
            place.Start is not { } start ? ""
            : place.End is { } end
                ? FormattableString.Invariant(
                    $", {start.Degrees:0.0}° to {end.Degrees:0.0}° from the start of the pass"
                )
            : FormattableString.Invariant($", {start.Degrees:0.0}° from the start of the pass");
        return $"joint {place.JointCode}{pass}{angle}";
    }
}
