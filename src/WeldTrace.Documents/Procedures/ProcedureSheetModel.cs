using WeldTrace.Documents.Traveler;

namespace WeldTrace.Documents.Procedures;

/// <summary>Everything a procedure sheet (pWPS or WPS) prints. Missing values are null or empty.</summary>
public sealed record ProcedureSheetModel
{
    public required DocumentStamp Stamp { get; init; }

    /// <summary>Absolute address of the revision's page; printed as a QR code and in text.</summary>
    public required string RecordAddress { get; init; }

    public required ProcedureIdentity Identity { get; init; }

    /// <summary>What the revision may be used for, and what not; printed as a notice. Null when production may use it.</summary>
    public string? Restriction { get; init; }

    /// <summary>Fields that are settled before the parameters, in groups as an engineer works.</summary>
    public IReadOnlyList<ValueGroup> Before { get; init; } = [];

    /// <summary>Fields that come after the parameters, such as thermal conditions and finishing.</summary>
    public IReadOnlyList<ValueGroup> After { get; init; } = [];

    /// <summary>Sketch of the joint; null when there is none, or it is no picture.</summary>
    public Photograph? Sketch { get; init; }

    public IReadOnlyList<ParameterLine> Parameters { get; init; } = [];

    /// <summary>Weld pitch and other computed figures with their bands.</summary>
    public IReadOnlyList<ComputedLine> Computed { get; init; } = [];

    /// <summary>Pass layouts to which the procedure applies.</summary>
    public IReadOnlyList<JointSheet> Joints { get; init; } = [];

    /// <summary>What differs from the revision before, one sentence each.</summary>
    public IReadOnlyList<string> Changes { get; init; } = [];

    public IReadOnlyList<SignatureEntry> Signatures { get; init; } = [];

    /// <summary>Roles for which the last page leaves room to sign by hand.</summary>
    public IReadOnlyList<string> SignedOnPaper { get; init; } = [];

    public IReadOnlyList<SourceNote> Sources { get; init; } = [];

    /// <summary>Limits whose source nobody has yet checked against the site's own copy.</summary>
    public IReadOnlyList<string> UncheckedLimits { get; init; } = [];
}

/// <summary>Fields under one heading.</summary>
public sealed record ValueGroup(string Heading, IReadOnlyList<LabelledValue> Values);

/// <summary>Head of the sheet.</summary>
public sealed record ProcedureIdentity
{
    public required string Number { get; init; }

    public required string Title { get; init; }

    public required string Revision { get; init; }

    public required StateMark State { get; init; }

    /// <summary>Whether this is a pWPS, not yet qualified.</summary>
    public required bool IsPreliminary { get; init; }

    /// <summary>The revision that this one takes the place of.</summary>
    public string? Supersedes { get; init; }

    /// <summary>The revision that took the place of this one.</summary>
    public string? SupersededBy { get; init; }

    /// <summary>The qualification record (WPQR) that supports it.</summary>
    public string? QualifiedBy { get; init; }

    public DateTimeOffset? ReleasedAt { get; init; }

    public IReadOnlyList<LabelledValue> Particulars { get; init; } = [];
}

/// <summary>One parameter window; numbers as text in <paramref name="Unit"/>.</summary>
public sealed record ParameterLine(string Name, string Unit)
{
    public string? SetPoint { get; init; }

    public string? Lower { get; init; }

    public string? Upper { get; init; }

    /// <summary>Whether a change beyond the window asks for a new qualification.</summary>
    public bool IsEssential { get; init; }

    public string? Remark { get; init; }
}

/// <summary>A computed figure with its band and how it was worked out; numbers as text in <paramref name="Unit"/>.</summary>
public sealed record ComputedLine(string Name, string Unit)
{
    public string? AtSetPoint { get; init; }

    public string? Least { get; init; }

    public string? Greatest { get; init; }

    /// <summary>Formula with its inputs, in one line.</summary>
    public string? Working { get; init; }

    /// <summary>Judgement of a warning band, where there is one.</summary>
    public StateMark? Judgement { get; init; }
}

/// <summary>A source of a limit or formula: document, edition and clause, and whether it was checked.</summary>
public sealed record SourceNote(string Subject, string Source)
{
    /// <summary>For instance <c>checked against own copy by L. Vaz, 2031-02-03</c>; null when unchecked.</summary>
    public string? Checked { get; init; }
}
