using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Findings;

/// <summary>Something that went wrong on a vessel (non-conformance report).</summary>
public sealed partial class Finding : Record
{
    /// <summary>Longest description or reason.</summary>
    public const int LongestText = 1000;

    /// <summary>What the signature under a disposition means.</summary>
    public const string DispositionMeaning = "I decide this finding as stated.";

    /// <summary>What the signature under a closing means.</summary>
    public const string ClosingMeaning =
        "I verified that the decision was carried out, and close this finding.";

    private Finding(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "finding";

    /// <inheritdoc/>
    public override string Label => LabelOf(Number);

    /// <summary>How a person names the finding of a number, for instance F-00012.</summary>
    /// <param name="number">Number of the finding, 1 or more.</param>
    public static string LabelOf(int number) => FormattableString.Invariant($"F-{number:00000}");

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => [VesselId];

    /// <inheritdoc/>
    public override bool IsSealed => State == FindingState.Closed;

    /// <summary>Running number at the site, from 1; given when it is first saved.</summary>
    public int Number { get; private set; }

    /// <summary>Vessel.</summary>
    public Guid VesselId { get; private set; }

    /// <summary>Serial of the vessel.</summary>
    public string VesselSerial { get; private set; } = "";

    /// <summary>Step on the route where it arose.</summary>
    public int StepSequence { get; private set; }

    /// <summary>Where it comes from.</summary>
    public FindingOrigin Origin { get; private set; }

    /// <summary>Kind of record that shows it; null when someone reported it.</summary>
    public string? EvidenceKind { get; private set; }

    /// <summary>Record that shows it.</summary>
    public Guid? EvidenceId { get; private set; }

    /// <summary>What was found.</summary>
    public string Description { get; private set; } = "";

    /// <summary>Where on the seam; null when it has no place there.</summary>
    public SeamPlace? Place { get; private set; }

    /// <summary>Printed name of whoever opened it, or did what opened it.</summary>
    public string OpenedBy { get; private set; } = "";

    /// <summary>UTC instant of opening.</summary>
    public DateTimeOffset OpenedAt { get; private set; }

    /// <summary>State.</summary>
    public FindingState State { get; private set; }

    /// <summary>The decision; null while open.</summary>
    public Disposition? Disposition { get; private set; }

    /// <summary>Decisions that a later one took the place of, oldest first; null when there was none.</summary>
    public IReadOnlyList<Disposition>? EarlierDecisions { get; private set; }

    /// <summary>The verification; null until closed.</summary>
    public Verification? Verification { get; private set; }

    /// <summary>Kind of defect and cause; null until stated.</summary>
    public FindingCause? Cause { get; private set; }

    /// <summary>Searches for other vessels that may be affected, oldest first; null when there was none.</summary>
    public IReadOnlyList<Containment>? Containments { get; private set; }

    /// <summary>What the material review board decided; null when it was not asked.</summary>
    public BoardDecision? Board { get; private set; }

    /// <summary>The repair as decided; null when none was.</summary>
    public RepairPlan? PlannedRepair { get; private set; }

    /// <summary>The repair as carried out; null until it is.</summary>
    public RepairWork? Repair { get; private set; }

    /// <summary>Opens a finding and puts the vessel on hold.</summary>
    public static Finding Open(
        Vessel vessel,
        int stepSequence,
        FindingOrigin origin,
        string description,
        Record? evidence,
        SeamPlace? place,
        Actor actor,
        DateTimeOffset at
    ) =>
        Make(
            Guid.CreateVersion7(at),
            vessel,
            stepSequence,
            origin,
            description,
            evidence,
            place,
            actor,
            at
        );

    /// <summary>Opens a finding that somebody reports.</summary>
    /// <param name="id">Identity made when the form was shown, so that sending it twice reports once.</param>
    /// <param name="vessel">Vessel; it is put on hold.</param>
    /// <param name="design">Its design, which knows the joints.</param>
    /// <param name="stepSequence">Step at which it was seen.</param>
    /// <param name="description">What was found; 1 to 1000 characters.</param>
    /// <param name="place">Place on a seam; null when it has none.</param>
    /// <param name="actor">Who reports.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<Finding> Report(
        Guid id,
        Vessel vessel,
        VesselDesign design,
        int stepSequence,
        string description,
        SeamPlace? place,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(design);
        ArgumentOutOfRangeException.ThrowIfNotEqual(design.Id, vessel.DesignId);
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.Operator, Role.Inspector, Role.QualityManager)
            .Text(description, LongestText, "Say what was found", nameof(Description))
            .That(
                vessel.Step(stepSequence) is not null,
                "step",
                $"The route of {vessel.Serial} has no step {stepSequence}.",
                nameof(StepSequence)
            )
            .That(
                !vessel.IsFinal,
                "state",
                $"{vessel.Serial} is {Vessel.StateWord(vessel.State)}; write to the quality manager instead."
            );
        place?.Check(checks, design.Content);
        return checks.AllHold
            ? Make(
                id,
                vessel,
                stepSequence,
                FindingOrigin.Report,
                description.Trim(),
                null,
                place,
                actor,
                at
            )
            : checks.Refusals;
    }

    /// <summary>Called by the storage on the first save.</summary>
    /// <param name="number">Next running number; 1 or more.</param>
    public void GiveNumber(int number)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        Number =
            Number == 0
                ? number
                : throw new InvalidOperationException($"{Label} has its number already.");
    }

    /// <summary>
    /// Whether the finding stops work on a step. Once it is to be done again, the step itself and what leads up to it may be done.
    /// </summary>
    /// <param name="stepSequence">Step about to be begun.</param>
    public bool Stops(int stepSequence) =>
        State switch
        {
            FindingState.Closed => false,
            FindingState.Disposed => AwaitsRepair || !(IsDoneAgain && stepSequence <= StepSequence),
            _ => true,
        };

    /// <summary>The word for a state, as shown.</summary>
    public static string StateWord(FindingState state) =>
        state switch
        {
            FindingState.Open => "open",
            FindingState.Disposed => "disposed",
            FindingState.Closed => "closed",
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };

    /// <summary>The words for a decision, as shown.</summary>
    public static string DispositionWord(DispositionKind kind) =>
        kind switch
        {
            DispositionKind.UseAsIs => "use as is",
            DispositionKind.Rework => "rework",
            DispositionKind.Repair => "repair",
            DispositionKind.Scrap => "scrap",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown decision."),
        };

    private static Finding Make(
        Guid id,
        Vessel vessel,
        int stepSequence,
        FindingOrigin origin,
        string description,
        Record? evidence,
        SeamPlace? place,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentException.ThrowIfNullOrWhiteSpace(description);
        var finding = new Finding(id)
        {
            VesselId = vessel.Id,
            VesselSerial = vessel.Serial,
            StepSequence = stepSequence,
            Origin = origin,
            EvidenceKind = evidence?.Kind,
            EvidenceId = evidence?.Id,
            Description =
                description.Length <= LongestText ? description : description[..LongestText],
            Place = place,
            OpenedBy = actor.PrintedName,
            OpenedAt = at,
        };
        finding.Note(actor, at, "finding opened", finding.Description);
        vessel.PlaceOnHold(actor, at, finding.Description);
        return finding;
    }
}
