using WeldTrace.Documents.Procedures;

namespace WeldTrace.Documents.Qualifications;

/// <summary>Everything a qualification record (WPQR) prints. Missing values are null or empty.</summary>
public sealed record QualificationModel
{
    public required DocumentStamp Stamp { get; init; }

    /// <summary>Absolute address of the record's page; printed as a QR code and in text.</summary>
    public required string RecordAddress { get; init; }

    public required string Number { get; init; }

    public required StateMark State { get; init; }

    /// <summary>Procedure, plan and requirements.</summary>
    public IReadOnlyList<LabelledValue> Particulars { get; init; } = [];

    /// <summary>What is missing, or why it was given up; printed as a notice. Empty when it is signed.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [];

    /// <summary>The range in one sentence; null until it is signed.</summary>
    public string? RangeSentence { get; init; }

    public IReadOnlyList<RangeRow> Range { get; init; } = [];

    /// <summary>All fields of the procedure as it was welded.</summary>
    public IReadOnlyList<ValueGroup> Procedure { get; init; } = [];

    public IReadOnlyList<PieceSheet> Pieces { get; init; } = [];

    public IReadOnlyList<ResultRow> Results { get; init; } = [];

    public IReadOnlyList<Photograph> Photographs { get; init; } = [];

    public IReadOnlyList<SignatureEntry> Signatures { get; init; } = [];

    public IReadOnlyList<SourceNote> Sources { get; init; } = [];

    /// <summary>Tables that nobody had compared with the site's own copy of their source.</summary>
    public IReadOnlyList<string> UncheckedLimits { get; init; } = [];
}

/// <summary>One line of the range.</summary>
public sealed record RangeRow(string Variable, string Covered, string Rule);

/// <summary>A test piece as it was welded.</summary>
public sealed record PieceSheet(string Title, StateMark State)
{
    public IReadOnlyList<LabelledValue> Particulars { get; init; } = [];

    /// <summary>Essential variables as actually run, over the steady traverse.</summary>
    public IReadOnlyList<AsRunRow> AsRun { get; init; } = [];
}

/// <summary>A parameter as actually run; numbers as text in <paramref name="Unit"/>.</summary>
public sealed record AsRunRow(
    string Parameter,
    string Unit,
    string Least,
    string Mean,
    string Greatest
);

/// <summary>One result; a planned test without a result has a mark and nothing else.</summary>
public sealed record ResultRow(string Specimen, string Test, string Place, StateMark Verdict)
{
    /// <summary>The verdict in words, with measured value and limit.</summary>
    public string? Sentence { get; init; }

    /// <summary>Method, acceptance, instrument, tester and readings in one paragraph.</summary>
    public string? Details { get; init; }
}
