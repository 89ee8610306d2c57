using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Domain.Testing;

/// <summary>
/// A step without readings, confirmed by signature: preparation, an examination, or the acceptance of the vessel. It holds what
/// was confirmed in words, so that the signature is bound to a statement. Never changed after it is made.
/// </summary>
public sealed partial class StepSignOff : Record
{
    /// <summary>Longest remark.</summary>
    public const int LongestRemark = 400;

    private StepSignOff(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "sign-off";

    /// <inheritdoc/>
    public override string Label => $"{VesselSerial} step {StepSequence}, {Title}";

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => [VesselId];

    /// <inheritdoc/>
    public override bool IsSealed => Version > 0;

    /// <summary>Vessel.</summary>
    public Guid VesselId { get; private set; }

    /// <summary>Serial of the vessel.</summary>
    public string VesselSerial { get; private set; } = "";

    /// <summary>Step on the route.</summary>
    public int StepSequence { get; private set; }

    /// <summary>What kind of step it was.</summary>
    public StepKind StepKind { get; private set; }

    /// <summary>Title of the step.</summary>
    public string Title { get; private set; } = "";

    /// <summary>What was confirmed, as it stood on the screen.</summary>
    public string Statement { get; private set; } = "";

    /// <summary>Anything worth telling; null when nothing is.</summary>
    public string? Remark { get; private set; }

    /// <summary>Who confirmed.</summary>
    public Guid PersonId { get; private set; }

    /// <summary>Printed name of whoever confirmed.</summary>
    public string PrintedName { get; private set; } = "";

    /// <summary>UTC instant.</summary>
    public DateTimeOffset At { get; private set; }

    /// <summary>Whether a kind of step is confirmed by signature alone.</summary>
    public static bool Serves(StepKind kind) =>
        kind is StepKind.Preparation or StepKind.Examination or StepKind.Acceptance;

    /// <summary>What whoever signs a step confirms.</summary>
    /// <param name="kind">Preparation, examination or acceptance.</param>
    /// <param name="designLabel">Number and revision of the design.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another kind of step.</exception>
    public static string StatementOf(StepKind kind, string designLabel) =>
        kind switch
        {
            StepKind.Preparation =>
                $"The components named on this vessel's record were prepared, cleaned and fitted up as {designLabel} and the welding procedure ask.",
            StepKind.Examination =>
                $"The vessel was examined as {designLabel} asks for this step; whatever did not conform is reported as a finding.",
            StepKind.Acceptance =>
                $"Every earlier step of the route is done, every finding is closed, and the records show that the vessel conforms to {designLabel}.",
            _ => throw new ArgumentOutOfRangeException(
                nameof(kind),
                kind,
                "Not signed off without a test."
            ),
        };

    /// <summary>What the signature under a kind of step means.</summary>
    /// <param name="kind">Preparation, examination or acceptance.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another kind of step.</exception>
    public static string MeaningOf(StepKind kind) =>
        kind switch
        {
            StepKind.Preparation => "I confirm the preparation as stated.",
            StepKind.Examination => "I examined the vessel and confirm what is stated.",
            StepKind.Acceptance => "I accept this vessel on the records as stated.",
            _ => throw new ArgumentOutOfRangeException(
                nameof(kind),
                kind,
                "Not signed off without a test."
            ),
        };

    /// <summary>Everything that keeps a person from signing the step now; empty when nothing does.</summary>
    /// <param name="facts">Vessel, step, design and findings.</param>
    /// <param name="weldedBy">Everyone who welded on the vessel.</param>
    /// <param name="actor">Who would sign.</param>
    public static IReadOnlyList<Refusal> RefusalsBefore(
        TestFacts facts,
        IReadOnlyCollection<Guid> weldedBy,
        Actor actor
    )
    {
        ArgumentNullException.ThrowIfNull(facts);
        return Check(facts, weldedBy, null, null, actor).Refusals;
    }

    /// <summary>The roles that may sign a kind of step.</summary>
    /// <param name="kind">Preparation, examination or acceptance.</param>
    public static IReadOnlyList<Role> RolesFor(StepKind kind) =>
        kind == StepKind.Preparation ? [Role.Operator, Role.Inspector] : [Role.Inspector];

    /// <summary>Confirms a step and passes it; an examination that rejected the weld fails it and opens a finding.</summary>
    /// <param name="id">Identity made when the form was shown, so that sending it twice confirms once.</param>
    /// <param name="facts">Vessel, step, design and findings.</param>
    /// <param name="weldedBy">Everyone who welded on the vessel.</param>
    /// <param name="remark">Anything worth telling; at most 400 characters.</param>
    /// <param name="examination">What was examined and found; needed at an examination, null elsewhere.</param>
    /// <param name="actor">Who confirms.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<SignedOffStep> Confirm(
        Guid id,
        TestFacts facts,
        IReadOnlyCollection<Guid> weldedBy,
        string? remark,
        ExaminationReport? examination,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(weldedBy);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = Check(facts, weldedBy, remark, examination, actor);
        if (checks.AllHold)
        {
            CheckExamination(checks, facts, examination);
        }

        var used = checks.TakeAny(facts, nameof(ExaminationReport.Instruments));

        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var (vessel, step) = (facts.Vessel, facts.Step);
        var signOff = new StepSignOff(id)
        {
            VesselId = vessel.Id,
            VesselSerial = vessel.Serial,
            StepSequence = step.Sequence,
            StepKind = step.Kind,
            Title = step.Title,
            Statement = StatementOf(step.Kind, facts.Design.Label),
            Remark = string.IsNullOrWhiteSpace(remark) ? null : remark.Trim(),
            Examination =
                used.Count == 0 || examination is null
                    ? examination
                    : examination with
                    {
                        Instruments = used,
                    },
            PersonId = actor.PersonId,
            PrintedName = actor.PrintedName,
            At = at,
        };
        signOff.Note(actor, at, "step signed off", signOff.Statement);
        var rejected = examination?.Rejected ?? [];
        var ended =
            rejected.Count == 0
                ? vessel.PassStep(step.Sequence, actor, at)
                : vessel.FailStep(step.Sequence, actor, at);
        return ended.IsAccepted
            ? new SignedOffStep(signOff, signOff.FindingOn(facts, rejected, actor, at))
            : ended.Refusals.ToList();
    }

    private static Checks Check(
        TestFacts facts,
        IReadOnlyCollection<Guid> weldedBy,
        string? remark,
        ExaminationReport? examination,
        Actor actor
    )
    {
        var (vessel, step) = (facts.Vessel, facts.Step);
        var checks = new Checks().That(
            Serves(step.Kind),
            "step",
            $"Step {step.Sequence} of {vessel.Serial} is not signed off alone; record its {step.Title} instead."
        );
        if (!checks.AllHold)
        {
            return checks;
        }

        checks
            .Role(actor, RolesFor(step.Kind))
            .Add(step.Kind == StepKind.Preparation ? [] : SecondPerson.Check(weldedBy, actor))
            .Add(
                step.Kind == StepKind.Examination
                    ? facts.Examiner.Against(examination?.Certified ?? ExaminationMethod.Visual)
                    : []
            )
            .InTurn(facts)
            .That(
                (remark?.Length ?? 0) <= LongestRemark,
                "remark",
                $"Keep the remark within {LongestRemark} characters.",
                nameof(Remark)
            );
        if (step.Kind == StepKind.Acceptance)
        {
            CheckComplete(checks, facts);
            CheckExamined(checks, facts);
        }

        return checks;
    }

    private static void CheckComplete(Checks checks, TestFacts facts)
    {
        var undone = facts
            .Vessel.Steps.Where(s => s.Sequence != facts.Step.Sequence && !s.IsDone)
            .Select(s => s.Sequence)
            .ToList();
        var open = facts
            .Findings.Where(f => f.State != FindingState.Closed)
            .Select(f => f.Label)
            .Order()
            .ToList();
        checks
            .That(
                undone.Count == 0,
                "route",
                $"Not done yet: step {string.Join(", ", undone)}. A vessel is accepted when every other step is done."
            )
            .That(
                open.Count == 0,
                "findings",
                $"Not closed yet: {string.Join(", ", open)}. A vessel is accepted when every finding is closed.",
                null,
                "NASA-STD-5006A GWR 81-83"
            );
        if (
            LotRules.AgainstAcceptance(facts.Vessel, facts.Design, facts.Lot, facts.Findings) is
            { } refusal
        )
        {
            checks.Add([refusal]);
        }
    }
}
