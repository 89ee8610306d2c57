namespace WeldTrace.Web.Components.Marks;

/// <summary>One rule and how it stands for the piece of work on the page.</summary>
/// <param name="Id">Short id of the rule, such as F5.</param>
/// <param name="Mark">Shape of its state.</param>
/// <param name="Word">Its state in words.</param>
/// <param name="Reason">One sentence: what was found, and how to mend it.</param>
/// <param name="Source">Published source of the rule, if any.</param>
/// <param name="LimitUnchecked">Whether the limit behind it has not yet been checked against the site's own copy.</param>
public sealed record RuleLine(
    string Id,
    Mark Mark,
    string Word,
    string Reason,
    string? Source = null,
    bool LimitUnchecked = false
)
{
    /// <summary>Records behind it.</summary>
    public IReadOnlyList<RuleLink> Links { get; init; } = [];
}

/// <summary>A record behind a rule.</summary>
/// <param name="Text">Its name.</param>
/// <param name="Address">Its page.</param>
public sealed record RuleLink(string Text, string Address);
