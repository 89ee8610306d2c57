using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Domain.Concessions;

/// <summary>What a concession may waive, and which run it lets through.</summary>
public static class ConcessionRules
{
    /// <summary>Why a rule can't be waived in this state of the records; null when it can.</summary>
    /// <param name="ruleId">Floor rule.</param>
    /// <param name="facts">What the rules look at.</param>
    public static string? AgainstWaiving(string ruleId, WeldGateFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return ruleId switch
        {
            _ when facts.Repair is { } repair =>
                $"No rule is waived for a repair weld; have {repair.Label} decided otherwise.",
            "F1" =>
                "The order of the route and open findings are never waived: a finding is decided and closed, a failed step accepted or done again, each under its own signature.",
            "F2" or "F3" when facts.Revision is null =>
                "Without a released procedure there is nothing to weld to; have one released.",
            "F5" when facts.Machine is null => "Choose the machine first.",
            "F6" when facts.Tool is null => "Choose the tool first.",
            "F20" when facts.Lot is not { Samples.Count: > 0 } =>
                "Samples are recorded before welding starts; that is never waived. Form the lot and choose its samples.",
            "F21" or "F20" or "F2" or "F3" or "F4" or "F5" or "F6" or "F7" or "F8" or "F9" => null,
            _ => $"There is no rule {ruleId} before a weld.",
        };
    }

    /// <summary>The person, machine or tool that a waiver of the rule is about; null when it is about the vessel alone.</summary>
    /// <param name="ruleId">Floor rule.</param>
    /// <param name="facts">What the rules look at.</param>
    public static RecordName? SubjectOf(string ruleId, WeldGateFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return ruleId switch
        {
            "F4" => new("person", facts.Welder.PersonId, facts.Welder.PrintedName),
            "F5" when facts.Machine is { } machine => RecordName.Of(machine),
            "F6" when facts.Tool is { } tool => RecordName.Of(tool),
            _ => null,
        };
    }

    /// <summary>The concession that waives a rule for the run in question; null when none does.</summary>
    /// <param name="ruleId">Floor rule.</param>
    /// <param name="facts">What the rules look at.</param>
    public static Concession? Covering(string ruleId, WeldGateFacts facts) =>
        AgainstWaiving(ruleId, facts) is null
            ? About(ruleId, facts)
                .LastOrDefault(c => c.State == ConcessionState.Granted && !IsUsed(c, facts))
            : null;

    /// <summary>The concession that awaits its second signature; null when none does.</summary>
    /// <param name="ruleId">Floor rule.</param>
    /// <param name="facts">What the rules look at.</param>
    public static Concession? Open(string ruleId, WeldGateFacts facts) =>
        About(ruleId, facts).LastOrDefault(c => c.State == ConcessionState.Asked);

    private static IEnumerable<Concession> About(string ruleId, WeldGateFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var subject = SubjectOf(ruleId, facts)?.Id;
        return facts.Concessions.Where(c =>
            c.RuleId == ruleId && c.StepSequence == facts.Step.Sequence && c.Only?.Id == subject
        );
    }

    // It lets one run through; whatever is done again is decided again.
    private static bool IsUsed(Concession concession, WeldGateFacts facts) =>
        facts.Runs.Any(r =>
            r.StepSequence == concession.StepSequence
            && r.Repair is null
            && r.StartedAt >= concession.DecidedBy!.At
        );
}
