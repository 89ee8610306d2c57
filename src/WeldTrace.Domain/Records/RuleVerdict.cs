namespace WeldTrace.Domain.Records;

/// <summary>How a rule of the floor stands.</summary>
public enum RuleStanding
{
    /// <summary>The rule is kept.</summary>
    Holds,

    /// <summary>The rule forbids the act.</summary>
    Forbids,

    /// <summary>The rule would forbid the act, but is waived for it by a signed concession.</summary>
    Waived,
}

/// <summary>A rule of the floor, judged for one act.</summary>
/// <param name="RuleId">Identity such as <c>F1</c>.</param>
/// <param name="Title">The rule in a few words.</param>
/// <param name="Standing">How it stands.</param>
/// <param name="Reason">What was found, in one sentence, with how to mend it when it forbids.</param>
/// <param name="Source">Published source of the rule.</param>
public sealed record RuleVerdict(
    string RuleId,
    string Title,
    RuleStanding Standing,
    string Reason,
    string Source
)
{
    /// <summary>Records that it was judged by; null in verdicts written before they were kept.</summary>
    public IReadOnlyList<RecordName>? Behind { get; init; }

    /// <summary>Concession that waives it; null when none does.</summary>
    public RecordName? Concession { get; init; }

    /// <summary>The refusal that follows when the rule forbids.</summary>
    public Refusal ToRefusal() => new(RuleId, $"{Title}: {Reason}", null, Source);
}
