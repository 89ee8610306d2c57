using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Compliance;

/// <summary>How well somebody here knows the text that a requirement comes from.</summary>
public enum SourceKnown
{
    /// <summary>Read in the source itself.</summary>
    Read,

    /// <summary>Read as another document quotes it.</summary>
    Quoted,

    /// <summary>From memory.</summary>
    FromMemory,
}

/// <summary>How far the records of a vessel show that a requirement is met.</summary>
public enum ComplianceState
{
    /// <summary>It asks nothing of this vessel.</summary>
    NotApplicable,

    /// <summary>The records show it.</summary>
    Shown,

    /// <summary>They show it for a part.</summary>
    Partly,

    /// <summary>No record shows it.</summary>
    NotShown,
}

/// <summary>What a published document asks of a vessel's history, in our own words.</summary>
/// <param name="Number">Number in the matrix.</param>
/// <param name="Text">What is asked.</param>
/// <param name="Source">Document with edition and clause.</param>
/// <param name="Known">How well the text of the source is known here.</param>
public sealed record Requirement(string Number, string Text, string Source, SourceKnown Known);

/// <summary>One line of a compliance matrix.</summary>
/// <param name="Requirement">What is asked.</param>
/// <param name="State">How far the records show it.</param>
/// <param name="Evidence">The records that show it.</param>
/// <param name="Comment">Why it doesn't apply, what is missing, and which concession stands in its place; may be empty.</param>
public sealed record ComplianceLine(
    Requirement Requirement,
    ComplianceState State,
    IReadOnlyList<RecordName> Evidence,
    string Comment
)
{
    /// <summary>Whether the requirement asks anything of the vessel.</summary>
    public bool IsApplicable => State != ComplianceState.NotApplicable;
}
