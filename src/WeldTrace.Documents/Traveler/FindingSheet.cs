namespace WeldTrace.Documents.Traveler;

/// <summary>A finding against the vessel with what was decided about it.</summary>
public sealed record FindingSheet
{
    public required string Number { get; init; }

    public required string Title { get; init; }

    public required StateMark State { get; init; }

    public required string OpenedBy { get; init; }

    public required DateTimeOffset OpenedAt { get; init; }

    /// <summary>The record that raised it: run, test, section or step.</summary>
    public string? RaisedFrom { get; init; }

    public string? Description { get; init; }

    public IReadOnlyList<DispositionLine> Dispositions { get; init; } = [];

    public Correction? Superseded { get; init; }
}

/// <summary>A decision about a finding: use as is, rework, repair or scrap; or its verification.</summary>
public sealed record DispositionLine(
    string Decision,
    string Reason,
    string DecidedBy,
    DateTimeOffset DecidedAt
)
{
    public Correction? Superseded { get; init; }
}

/// <summary>A floor rule waived for one step by two signatures.</summary>
public sealed record ConcessionSheet
{
    public required string Number { get; init; }

    /// <summary>Identifier and wording of the rule, for instance <c>F8: time since cleaning</c>.</summary>
    public required string Rule { get; init; }

    public required string Step { get; init; }

    public required string Reason { get; init; }

    public required IReadOnlyList<string> GrantedBy { get; init; }

    public required DateTimeOffset GrantedAt { get; init; }

    public Correction? Superseded { get; init; }
}
