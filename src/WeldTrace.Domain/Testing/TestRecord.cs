using WeldTrace.Domain.Certification;
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

    /// <summary>What a signature under a withdrawal means.</summary>
    public const string WithdrawalMeaning =
        "I withdraw this test, because it was entered wrongly as stated.";

    /// <summary>Makes the record, or is used by the storage when it reads one.</summary>
    protected TestRecord(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => [VesselId];

    /// <inheritdoc/>
    public override bool IsSealed => SignedAt is not null || Withdrawal is not null;

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

    /// <summary>Why and by whom it was taken back before it was signed; null when it was not.</summary>
    public TestWithdrawal? Withdrawal { get; private set; }

    /// <summary>Instruments from the register that supplied its values; null in tests recorded before they were chosen from it.</summary>
    public IReadOnlyList<UsedInstrument>? Instruments { get; protected set; }

    /// <summary>Method for which whoever tests and signs is certified.</summary>
    protected abstract ExaminationMethod Examination { get; }

    /// <summary>Where a finding from this test comes from.</summary>
    protected abstract FindingOrigin Origin { get; }

    /// <summary>Whether it showed, now or before a correction, anything but a pass: then only someone else takes it back.</summary>
    protected virtual bool ShowedOtherThanPass =>
        Verdict is not (null or Engineering.Conformity.Verdict.Pass);

    /// <summary>Where on the seam a finding from this test lies; null when it has no place there.</summary>
    protected virtual SeamPlace? Place => null;

    /// <summary>Everything that keeps a test of this kind from being recorded at a step now; empty when nothing does.</summary>
    /// <param name="facts">Vessel, step, design, findings and unsigned tests.</param>
    /// <param name="kind">Kind of step that the test serves.</param>
    /// <param name="actor">Who would record it.</param>
    public static IReadOnlyList<Refusal> RefusalsBefore(
        TestFacts facts,
        VesselDesigns.StepKind kind,
        Actor actor
    ) => CheckBeginning(facts, kind, null, actor).Refusals;

    /// <summary>What of that is about the step and not about a person; empty when nothing keeps it.</summary>
    /// <param name="facts">Vessel, step, findings and unsigned tests.</param>
    /// <param name="kind">Kind of step that the test serves.</param>
    public static IReadOnlyList<Refusal> RefusalsOfStep(
        TestFacts facts,
        VesselDesigns.StepKind kind
    ) => CheckStep(new Checks(), facts, kind).Refusals;

    /// <summary>What else follows for the vessel once the test is signed.</summary>
    private protected virtual void Follow(Vessel vessel, Actor actor, DateTimeOffset at) { }

    /// <summary>What the signature of a person under this test means.</summary>
    /// <param name="actor">Who would sign.</param>
    public string MeaningFor(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return actor.PersonId == InspectorId
            ? "I made this test, and the readings are as recorded."
            : "I checked this test against its readings and confirm its verdict.";
    }

    /// <summary>The inspector signs: a pass passes the step, anything else fails it and opens a finding.</summary>
    /// <param name="vessel">Vessel.</param>
    /// <param name="weldedBy">Everyone who welded on the vessel.</param>
    /// <param name="examiner">Certificates of whoever signs.</param>
    /// <param name="actor">Who signs.</param>
    /// <param name="at">UTC instant.</param>
    /// <returns>The finding, or none when the test passed.</returns>
    public Outcome<SignedTest> Sign(
        Vessel vessel,
        IReadOnlyCollection<Guid> weldedBy,
        ExaminerFacts examiner,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(examiner);
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentOutOfRangeException.ThrowIfNotEqual(vessel.Id, VesselId);
        var checks = new Checks()
            .Role(actor, Role.Inspector)
            .Add(SecondPerson.Check(weldedBy, actor))
            .Add(examiner.Against(Examination))
            .That(Withdrawal is null, "state", "This test was withdrawn; record it anew.")
            .That(SignedAt is null, "state", "This test is signed already.")
            .That(
                !(vessel.Step(StepSequence)?.OpenedAgainAt > TestedAt),
                "stale",
                $"Step {StepSequence} of {VesselSerial} was opened again after this test; withdraw it and test anew."
            )
            .That(
                Verdict is not null,
                "readings",
                "Readings are missing; there is no verdict to sign yet."
            );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var isPass = Verdict == Engineering.Conformity.Verdict.Pass;
        var step = isPass
            ? vessel.PassStep(StepSequence, actor, at)
            : vessel.FailStep(StepSequence, actor, at);
        if (!step.IsAccepted)
        {
            return step.Refusals.ToList();
        }

        Note(actor, at, "test signed");
        SignedAt = at;
        var finding = isPass
            ? null
            : Finding.Open(vessel, StepSequence, Origin, VerdictSentence, this, Place, actor, at);
        Follow(vessel, actor, at);
        return new SignedTest(finding);
    }

    /// <summary>Takes back a test that was entered wrongly and not yet signed. It stays readable, and the step is tested again.</summary>
    /// <param name="reason">What was entered wrongly; 1 to 400 characters.</param>
    /// <param name="actor">Who takes it back; a test that did not pass needs someone else than whoever recorded it.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Withdraw(string reason, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.Inspector, Role.QualityManager)
            .Text(
                reason,
                LongestText,
                "Say what was entered wrongly",
                nameof(TestWithdrawal.Reason)
            )
            .That(
                !IsSealed,
                "state",
                "This test is signed or withdrawn already and stays as it is."
            )
            .That(
                !ShowedOtherThanPass || actor.PersonId != InspectorId,
                "second-person",
                $"The test {(Verdict is null ? "showed something other than a pass" : $"reads '{VerdictWord(Verdict)}'")} and you recorded it; ask another inspector or the quality manager to withdraw it, or sign it as it is."
            );
        if (checks.AllHold)
        {
            Note(actor, at, "test withdrawn", reason.Trim());
            Withdrawal = new(reason.Trim(), actor.PersonId, actor.PrintedName, at);
        }

        return checks.ToOutcome();
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

    private static ExaminationMethod MethodOf(VesselDesigns.StepKind kind) =>
        kind switch
        {
            VesselDesigns.StepKind.LeakTest => ExaminationMethod.Leak,
            VesselDesigns.StepKind.PressureTest => ExaminationMethod.Pressure,
            VesselDesigns.StepKind.Section => ExaminationMethod.Macroscopic,
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No test."),
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
        string? remark,
        Actor actor
    )
    {
        ArgumentNullException.ThrowIfNull(facts);
        var checks = new Checks()
            .Role(actor, Role.Inspector)
            .Add(facts.Examiner.Against(MethodOf(kind)));
        return CheckStep(checks, facts, kind)
            .That(
                (remark?.Length ?? 0) <= LongestText,
                "remark",
                $"Keep the remark within {LongestText} characters.",
                nameof(Remark)
            );
    }

    private static Checks CheckStep(Checks checks, TestFacts facts, VesselDesigns.StepKind kind)
    {
        var step = facts.Step;
        return checks
            .That(
                step.Kind == kind,
                "step",
                $"Step {step.Sequence} of {facts.Vessel.Serial} is another kind of step: {step.Title}."
            )
            .InTurn(facts)
            .NonePending(facts);
    }
}

/// <summary>What follows from a signed test.</summary>
/// <param name="Finding">The finding that it opened; null when it passed.</param>
public sealed record SignedTest(Finding? Finding);
