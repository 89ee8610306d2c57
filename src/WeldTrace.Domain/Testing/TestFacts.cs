using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Testing;

/// <summary>What a test looks at before it may be recorded.</summary>
/// <param name="Vessel">Vessel.</param>
/// <param name="Step">Step of its route.</param>
/// <param name="Design">Design with the limits.</param>
/// <param name="Findings">Findings of the vessel.</param>
public sealed record TestFacts(
    Vessel Vessel,
    RouteStep Step,
    VesselDesign Design,
    IReadOnlyList<Finding> Findings
)
{
    /// <summary>Whoever tests or signs.</summary>
    public required ExaminerFacts Examiner { get; init; }

    /// <summary>Production lot of the vessel; null when it is in none.</summary>
    public ProductionLot? Lot { get; init; }

    /// <summary>Instruments as typed, each with what the register has of it.</summary>
    public IReadOnlyList<TypedInstrument> Typed { get; init; } = [];

    /// <summary>Whether whoever tests confirmed the cautions about stored energy and stand-off (F14).</summary>
    public bool CautionsRead { get; init; }

    /// <summary>Methods by which this vessel was examined, in the steps that stand as done.</summary>
    public IReadOnlyList<PlannedExamination> Examined { get; init; } = [];

    /// <summary>Methods by which the design has every vessel examined and this one was not, in the order of the plan.</summary>
    public IReadOnlyList<PlannedExamination> NotYetExamined =>
        [.. ExaminationPlan.OfEachVessel(Design.Content).Except(Examined)];

    /// <summary>Tests recorded at this step that are neither signed nor withdrawn.</summary>
    public IReadOnlyList<TestRecord> Unsigned { get; init; } = [];
}

/// <summary>Whether work may begin at a step.</summary>
internal static class StepChecks
{
    /// <summary>The step is the next one on the route and no finding stops it (floor rule F1).</summary>
    public static Checks InTurn(this Checks checks, TestFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var (vessel, step) = (facts.Vessel, facts.Step);
        var stopping = facts
            .Findings.Where(f => f.Stops(step.Sequence))
            .Select(f => f.Label)
            .Order()
            .ToList();
        return checks
            .That(
                !vessel.IsFinal,
                "state",
                $"{vessel.Serial} is {Vessel.StateWord(vessel.State)}; nothing more is recorded on its route."
            )
            .That(
                vessel.NextStep?.Sequence == step.Sequence
                    && step.State is StepState.Ready or StepState.InProgress,
                "F1",
                vessel.NextStep is { } next
                    ? $"Step {next.Sequence} of {vessel.Serial} comes next; step {step.Sequence} is {RouteStep.StateWord(step.State)}."
                    : $"The route of {vessel.Serial} is done; step {step.Sequence} is {RouteStep.StateWord(step.State)}.",
                null,
                "21 CFR 11.10(f) as a model"
            )
            .That(
                stopping.Count == 0,
                "F1",
                $"Open findings hold the vessel: {string.Join(", ", stopping)}. Decide and close them first.",
                null,
                "NASA-STD-5006A GWR 81-83"
            );
    }

    /// <summary>No result is passed over by testing again: what was recorded is signed or withdrawn first.</summary>
    public static Checks NonePending(this Checks checks, TestFacts facts) =>
        checks.That(
            facts.Unsigned.Count == 0,
            "unsigned",
            $"A test of step {facts.Step.Sequence} is recorded and not signed ({string.Join(", ", facts.Unsigned.Select(t => t.InspectorName).Distinct())}). Sign it or withdraw it before you record another."
        );
}
