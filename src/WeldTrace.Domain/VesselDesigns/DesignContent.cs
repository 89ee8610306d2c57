using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.VesselDesigns;

/// <summary>What a design revision lays down; frozen once released.</summary>
/// <param name="Alloy">Parent alloy.</param>
/// <param name="Temper">Parent temper.</param>
/// <param name="InnerDiameter">Inner diameter; above zero.</param>
/// <param name="WallThickness">Wall; above zero.</param>
/// <param name="Volume">Inner volume; above zero.</param>
/// <param name="AllowableStress">Stress that the design allows at the operating pressure, welds included; above zero.</param>
/// <param name="Joints">Joints with their passes.</param>
/// <param name="Pressures">Pressures, limits and stages.</param>
/// <param name="Route">Steps in order.</param>
/// <param name="RequiredDocument">Weakest inspection document that a material lot may have; null when the design asks for none.</param>
/// <param name="PedCategory">Category by the Pressure Equipment Directive; null when the design states none.</param>
/// <param name="PedSource">Where that category is from, in words; null without one.</param>
public sealed record DesignContent(
    string Alloy,
    string Temper,
    Length InnerDiameter,
    Length WallThickness,
    Volume Volume,
    Pressure AllowableStress,
    IReadOnlyList<Joint> Joints,
    PressurePlan Pressures,
    IReadOnlyList<RouteTemplateStep> Route,
    InspectionDocumentType? RequiredDocument = null,
    PedCategory? PedCategory = null,
    string? PedSource = null
)
{
    /// <summary>Longest source of the PED category.</summary>
    public const int LongestSource = 200;

    /// <summary>The least examinations by class, as they stood when it was drawn; null in designs drawn before they were kept.</summary>
    public LeastExaminations? Least { get; init; }

    /// <summary>Destructive samples of each production lot; null when the design asks for none.</summary>
    public SamplePlan? Samples { get; init; }

    /// <summary>Methods, extent and limits of the examinations; null in designs drawn before they were asked for.</summary>
    public IReadOnlyList<PlannedMethod>? Examinations { get; init; }

    /// <summary>When test welds of running production fall due; null when the design asks for none.</summary>
    public ProductionTestRule? ProductionTests { get; init; }

    /// <summary>The joint of a code; null when there is none.</summary>
    public Joint? Joint(string? code) => Joints.FirstOrDefault(j => j.Code == code);

    /// <summary>Everything that is wrong.</summary>
    public IReadOnlyList<Refusal> Check()
    {
        var checks = new Checks()
            .Text(Alloy, 60, "Give the parent alloy", nameof(Alloy))
            .Text(Temper, 60, "Give the temper", nameof(Temper))
            .That(
                InnerDiameter > Length.Zero,
                "diameter",
                "Give the inner diameter, above zero.",
                nameof(InnerDiameter)
            )
            .That(
                WallThickness > Length.Zero,
                "wall",
                "Give the wall thickness, above zero.",
                nameof(WallThickness)
            )
            .That(
                Volume > Volume.Zero,
                "volume",
                "Give the inner volume, above zero.",
                nameof(Volume)
            )
            .That(
                AllowableStress > Pressure.Zero,
                "stress",
                "Give the allowable stress, above zero.",
                nameof(AllowableStress)
            )
            .That(
                PedCategory is null || !string.IsNullOrWhiteSpace(PedSource),
                "ped-source",
                "Say where the PED category is from, for instance the table of annex II and who decided it.",
                nameof(PedSource)
            )
            .That(
                PedSource is not { Length: > LongestSource },
                "ped-source",
                $"Shorten the source of the PED category to {LongestSource} characters.",
                nameof(PedSource)
            )
            .That(Joints.Count > 0, "joints", "A design needs at least one joint.", nameof(Joints))
            .That(
                Joints.Select(j => j.Code).Distinct().Count() == Joints.Count,
                "joints",
                "Two joints have the same code; change one.",
                nameof(Joints)
            );
        CheckParts(checks);
        return checks.Refusals;
    }

    private void CheckParts(Checks checks)
    {
        foreach (var joint in Joints)
        {
            joint.Check(checks);
        }

        Pressures.Check(checks);
        Samples?.Check(checks);
        ProductionTests?.Check(checks);
        CheckRoute(checks);
        CheckSampleSteps(checks);
        ExaminationPlan.Check(checks, this);
    }

    private void CheckRoute(Checks checks)
    {
        checks
            .That(Route.Count > 0, "route", "The route needs steps.", nameof(Route))
            .That(
                Route.Zip(Route.Skip(1)).All(p => p.First.Sequence < p.Second.Sequence),
                "route",
                "Number the steps of the route in rising order.",
                nameof(Route)
            );
        foreach (var step in Route)
        {
            checks.Text(step.Title, 120, $"Give step {step.Sequence} a title", nameof(Route));
            if (step.Kind is StepKind.Weld or StepKind.Section)
            {
                checks.That(
                    Joint(step.JointCode) is not null,
                    "route",
                    $"Step {step.Sequence} names joint '{step.JointCode}', which the design doesn't have.",
                    nameof(Route)
                );
            }

            if (step.Kind == StepKind.Weld)
            {
                checks.That(
                    step.PassNumber is { } pass && Joint(step.JointCode)?.Pass(pass) is not null,
                    "route",
                    $"Step {step.Sequence} names pass {step.PassNumber} of joint {step.JointCode}, which the design doesn't have.",
                    nameof(Route)
                );
            }
        }

        foreach (var (joint, pass) in Joints.SelectMany(j => j.Passes.Select(p => (j, p))))
        {
            var count = Route.Count(s =>
                s.Kind == StepKind.Weld && s.JointCode == joint.Code && s.PassNumber == pass.Number
            );
            checks.That(
                count == 1,
                "route",
                $"Pass {pass.Number} of joint {joint.Code} is welded by {count} steps of the route; one is right.",
                nameof(Route)
            );
        }
    }

    private void CheckSampleSteps(Checks checks)
    {
        foreach (var step in Route)
        {
            checks.That(
                step.OnlyFor is not { } sample
                    || (
                        step.Kind is not (StepKind.Weld or StepKind.Acceptance)
                        && Samples?.Demands.Any(d => d.Kind == sample) == true
                    ),
                "route",
                $"Step {step.Sequence} is for samples only; the design must ask for such samples, and it can be neither a weld nor the acceptance.",
                nameof(Route)
            );
        }

        foreach (var demand in Samples?.Demands ?? [])
        {
            checks.That(
                Route.Any(s =>
                    s.OnlyFor == demand.Kind
                    || (demand.Kind == SampleKind.Burst && s.Kind == StepKind.PressureTest)
                ),
                "route",
                $"The design asks for {SamplePlan.KindWord(demand.Kind)} samples, but no step of the route is for them.",
                nameof(Route)
            );
        }
    }
}
