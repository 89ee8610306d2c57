using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Domain.Concessions;

/// <summary>
/// A rule before a weld, waived for one run of one step by the signatures of a welding engineer and a quality manager. It names what
/// the rule said and, for a person, a machine or a tool, whom or what alone it lets through.
/// </summary>
public sealed class Concession : Record
{
    /// <summary>Longest reason.</summary>
    public const int LongestReason = 1000;

    /// <summary>What the first signature means.</summary>
    public const string AskMeaning =
        "I ask that this rule be waived for this step, for the reason given.";

    /// <summary>What the second signature means.</summary>
    public const string GrantMeaning =
        "I agree that this rule is waived for this step, for the reason given.";

    /// <summary>What the signature under a refusal means.</summary>
    public const string DeclineMeaning = "I do not let this rule be waived, for the reason given.";

    private const string Source =
        "Waiver by two signatures: rule of the floor of this program; concession as in ISO 9000:2015 3.12.5 (from memory)";

    private Concession(Guid id)
        : base(id) { }

    /// <summary>The two roles that sign.</summary>
    public static IReadOnlyList<Role> Signers { get; } = [Role.Engineer, Role.QualityManager];

    /// <inheritdoc/>
    public override string Kind => "concession";

    /// <inheritdoc/>
    public override string Label => $"{VesselSerial} step {StepSequence}, {RuleId} waived";

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => [VesselId];

    /// <inheritdoc/>
    public override bool IsSealed => State != ConcessionState.Asked;

    /// <summary>Vessel.</summary>
    public Guid VesselId { get; private set; }

    /// <summary>Serial of the vessel.</summary>
    public string VesselSerial { get; private set; } = "";

    /// <summary>Step on the route.</summary>
    public int StepSequence { get; private set; }

    /// <summary>Floor rule, for instance <c>F7</c>.</summary>
    public string RuleId { get; private set; } = "";

    /// <summary>The rule in a few words.</summary>
    public string RuleTitle { get; private set; } = "";

    /// <summary>What the rule said when the concession was asked for.</summary>
    public string Forbids { get; private set; } = "";

    /// <summary>The person, machine or tool that it lets through; null when the rule concerns the vessel alone.</summary>
    public RecordName? Only { get; private set; }

    /// <summary>Why the rule may be waived.</summary>
    public string Reason { get; private set; } = "";

    /// <summary>State.</summary>
    public ConcessionState State { get; private set; }

    /// <summary>Who asked, by the first signature.</summary>
    public ConcessionSigner AskedBy { get; private set; } = null!;

    /// <summary>Who granted or declined; null while it is open.</summary>
    public ConcessionSigner? DecidedBy { get; private set; }

    /// <summary>Why it was declined; null when it was not.</summary>
    public string? DeclinedBecause { get; private set; }

    /// <summary>Asks for a rule to be waived; the first of the two signatures.</summary>
    /// <param name="facts">What the rules look at: vessel, step, welder, machine and tool of the run in question.</param>
    /// <param name="ruleId">Rule that forbids the run.</param>
    /// <param name="reason">Why it may be waived; 1 to 1000 characters.</param>
    /// <param name="actor">Welding engineer or quality manager.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<Concession> Ask(
        WeldGateFacts facts,
        string ruleId,
        string reason,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(actor);
        var verdict = WeldGate.Judge(facts).FirstOrDefault(v => v.RuleId == ruleId);
        var never = ConcessionRules.AgainstWaiving(ruleId, facts);
        var open = ConcessionRules.Open(ruleId, facts);
        var checks = new Checks()
            .Role(actor, Signers)
            .Text(reason, LongestReason, "Say why the rule may be waived", nameof(Reason))
            .That(
                verdict is { Standing: RuleStanding.Forbids },
                "rule",
                $"Rule {ruleId} does not forbid this run, so there is nothing to waive."
            )
            .That(never is null, "never", never ?? "", null, Source)
            .That(
                open is null,
                "open",
                $"{open?.AskedBy.PrintedName} has asked for this already; sign or decline that one."
            );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var concession = new Concession(Guid.CreateVersion7(at))
        {
            VesselId = facts.Vessel.Id,
            VesselSerial = facts.Vessel.Serial,
            StepSequence = facts.Step.Sequence,
            RuleId = verdict!.RuleId,
            RuleTitle = verdict.Title,
            Forbids = verdict.Reason,
            Only = ConcessionRules.SubjectOf(ruleId, facts),
            Reason = reason.Trim(),
            AskedBy = ConcessionSigner.Of(actor, at),
        };
        concession.Note(actor, at, "concession asked for", concession.Reason);
        return concession;
    }

    /// <summary>The second signature: the rule is waived from now on, for the next run of the step.</summary>
    public Outcome Grant(Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var second = ConcessionSigner.Of(actor, at);
        var checks = CheckOpen(actor)
            .That(
                actor.PersonId != AskedBy.PersonId,
                "second-person",
                "You asked for it; the second signature must be another person's.",
                null,
                Source
            )
            .That(
                second.Roles.Count == 0 || second.Completes(AskedBy),
                "second-role",
                $"One signature must be the engineer's and one the quality manager's; {AskedBy.PrintedName} signed as {string.Join(" and ", AskedBy.Roles.Select(RoleRules.Word))}.",
                null,
                Source
            );
        if (checks.AllHold)
        {
            Note(actor, at, "concession granted", Reason);
            (State, DecidedBy) = (ConcessionState.Granted, second);
        }

        return checks.ToOutcome();
    }

    /// <summary>Turns it down, or takes it back.</summary>
    public Outcome Decline(string reason, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = CheckOpen(actor)
            .Text(reason, LongestReason, "Say why it is declined", nameof(DeclinedBecause));
        if (checks.AllHold)
        {
            Note(actor, at, "concession declined", reason.Trim());
            (State, DecidedBy, DeclinedBecause) = (
                ConcessionState.Declined,
                ConcessionSigner.Of(actor, at),
                reason.Trim()
            );
        }

        return checks.ToOutcome();
    }

    /// <summary>The word for a state, as shown.</summary>
    public static string StateWord(ConcessionState state) =>
        state switch
        {
            ConcessionState.Asked => "awaits the second signature",
            ConcessionState.Granted => "granted",
            ConcessionState.Declined => "declined",
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };

    private Checks CheckOpen(Actor actor) =>
        new Checks()
            .Role(actor, Signers)
            .That(
                State == ConcessionState.Asked,
                "state",
                $"The concession is {StateWord(State)} already."
            );
}
