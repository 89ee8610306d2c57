using WeldTrace.Domain.Findings;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Domain.Testing;

/// <summary>What all recorded tests and examinations of a vessel have in common.</summary>
public abstract class TestRecord : Record
{
    /// <summary>Longest remark or instrument name.</summary>
    public const int LongestText = 400;

    /// <summary>Makes the record, or is used by the storage when it reads one.</summary>
    protected TestRecord(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => [VesselId];

    /// <inheritdoc/>
    public override bool IsSealed => SignedAt is not null;

    /// <summary>Vessel.</summary>
    public Guid VesselId { get; private set; }

    /// <summary>Serial of the vessel.</summary>
    public string VesselSerial { get; private set; } = "";

    /// <summary>Step on the route.</summary>
    public int StepSequence { get; private set; }

    /// <summary>Who tested.</summary>
    public Guid InspectorId { get; private set; }

    /// <summary>Printed name of whoever tested.</summary>
    public string InspectorName { get; private set; } = "";

    /// <summary>UTC instant at which it was entered.</summary>
    public DateTimeOffset TestedAt { get; private set; }

    /// <summary>Verdict computed from the readings; null while readings are still missing.</summary>
    public Verdict? Verdict { get; protected set; }

    /// <summary>The verdict in a sentence, with measured value, limit and uncertainty.</summary>
    public string VerdictSentence { get; protected set; } = "";

    /// <summary>Anything worth telling; null when nothing is.</summary>
    public string? Remark { get; protected set; }

    /// <summary>UTC instant at which the inspector signed; the record is closed from then on.</summary>
    public DateTimeOffset? SignedAt { get; private set; }

    /// <summary>Where a finding from this test comes from.</summary>
    protected abstract FindingOrigin Origin { get; }

    /// <summary>Where on the seam a finding from this test lies; null when it has no place there.</summary>
    protected virtual SeamPlace? Place => null;

    /// <summary>The inspector signs: a pass passes the step, anything else fails it and opens a finding.</summary>
    /// <param name="vessel">Vessel.</param>
    /// <param name="weldedBy">Everyone who welded on the vessel.</param>
    /// <param name="actor">Who signs.</param>
    /// <param name="at">UTC instant.</param>
    /// <returns>The finding, or none when the test passed.</returns>
    public Outcome<SignedTest> Sign(
        Vessel vessel,
        IReadOnlyCollection<Guid> weldedBy,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentOutOfRangeException.ThrowIfNotEqual(vessel.Id, VesselId);
        var checks = new Checks()
            .Role(actor, Role.Inspector)
            .Add(SecondPerson.Check(weldedBy, actor))
            .That(!IsSealed, "state", "This test is signed already.")
            .That(
                Verdict is not null,
                "readings",
                "Readings are missing; there is no verdict to sign yet."
            );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        Note(actor, at, "test signed");
        SignedAt = at;
        var step =
            Verdict == Engineering.Conformity.Verdict.Pass
                ? vessel.PassStep(StepSequence, actor, at)
                : vessel.FailStep(StepSequence, actor, at);
        if (!step.IsAccepted)
        {
            return step.Refusals.ToList();
        }

        return new SignedTest(
            Verdict == Engineering.Conformity.Verdict.Pass
                ? null
                : Finding.Open(
                    vessel,
                    StepSequence,
                    Origin,
                    VerdictSentence,
                    this,
                    Place,
                    actor,
                    at
                )
        );
    }

    /// <summary>The word for a verdict, as shown. An undecided test is not a pass.</summary>
    public static string VerdictWord(Verdict? verdict) =>
        verdict switch
        {
            null => "not finished",
            Engineering.Conformity.Verdict.Pass => "pass",
            Engineering.Conformity.Verdict.Fail => "fail",
            Engineering.Conformity.Verdict.Undecided => "undecided",
            _ => throw new ArgumentOutOfRangeException(
                nameof(verdict),
                verdict,
                "Unknown verdict."
            ),
        };

    private protected void SetOrigin(
        Vessel vessel,
        int stepSequence,
        Actor actor,
        DateTimeOffset at
    )
    {
        (VesselId, VesselSerial, StepSequence) = (vessel.Id, vessel.Serial, stepSequence);
        (InspectorId, InspectorName, TestedAt) = (actor.PersonId, actor.PrintedName, at);
    }

    private protected static Checks CheckBeginning(
        TestFacts facts,
        VesselDesigns.StepKind kind,
        Actor actor
    )
    {
        ArgumentNullException.ThrowIfNull(facts);
        var (vessel, step) = (facts.Vessel, facts.Step);
        var stopping = facts
            .Findings.Where(f => f.Stops(step.Sequence))
            .Select(f => f.Label)
            .Order()
            .ToList();
        return new Checks()
            .Role(actor, Role.Inspector)
            .That(
                step.Kind == kind,
                "step",
                $"Step {step.Sequence} of {vessel.Serial} is another kind of step: {step.Title}."
            )
            .That(
                vessel.NextStep?.Sequence == step.Sequence
                    && step.State is StepState.Ready or StepState.InProgress,
                "F1",
                $"Step {vessel.NextStep?.Sequence} of {vessel.Serial} comes next; step {step.Sequence} is {RouteStep.StateWord(step.State)}.",
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
}

/// <summary>What a test looks at before it may be recorded.</summary>
/// <param name="Vessel">Vessel.</param>
/// <param name="Step">Step of its route.</param>
/// <param name="Design">Design with the limits.</param>
/// <param name="Findings">Findings of the vessel.</param>
public sealed record TestFacts(
    Vessel Vessel,
    RouteStep Step,
    VesselDesigns.VesselDesign Design,
    IReadOnlyList<Finding> Findings
);

/// <summary>What follows from a signed test.</summary>
/// <param name="Finding">The finding that it opened; null when it passed.</param>
public sealed record SignedTest(Finding? Finding);
