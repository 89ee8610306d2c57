using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Procedures;
using WeldTrace.Documents.Traveler;
using WeldTrace.Engineering;

namespace WeldTrace.Documents.TestReports;

/// <summary>Everything that the certificate or report of one test prints. Missing values are null or empty.</summary>
public sealed record TestReportModel
{
    public required DocumentStamp Stamp { get; init; }

    /// <summary>Absolute address of the test's page; printed as a QR code and in text.</summary>
    public required string RecordAddress { get; init; }

    /// <summary>For instance <c>Leak test certificate</c>; a test that did not pass, or is not signed, is a report.</summary>
    public required string Title { get; init; }

    /// <summary>What was tested.</summary>
    public required string Subject { get; init; }

    public required StateMark Verdict { get; init; }

    /// <summary>One sentence that says how the verdict follows from the readings.</summary>
    public required string Explanation { get; init; }

    /// <summary>Whether something is put under pressure, so that the cautions about that belong on the paper.</summary>
    public bool IsUnderPressure { get; init; }

    /// <summary>What keeps this paper from being a certificate: not signed, withdrawn, undecided. Empty for a signed pass.</summary>
    public IReadOnlyList<string> Notices { get; init; } = [];

    /// <summary>Vessel, design, medium, set-up: each value with its unit.</summary>
    public IReadOnlyList<LabelledValue> Particulars { get; init; } = [];

    /// <summary>What was found, with uncertainty and limit.</summary>
    public IReadOnlyList<LabelledValue> Results { get; init; } = [];

    /// <summary>Tables of limits that nobody compared with an own copy.</summary>
    public IReadOnlyList<string> UncheckedLimits { get; init; } = [];

    /// <summary>What was measured on a picture.</summary>
    public IReadOnlyList<MeasurementLine> Measurements { get; init; } = [];

    /// <summary>What was replaced or struck out before it was signed.</summary>
    public IReadOnlyList<string> Replaced { get; init; } = [];

    /// <summary>Seams with the place of the cut.</summary>
    public IReadOnlyList<ReportSeam> Seams { get; init; } = [];

    /// <summary>Tables of readings.</summary>
    public IReadOnlyList<ReportTable> Tables { get; init; } = [];

    /// <summary>Ladder with its readings; null where no pressure is raised by stages.</summary>
    public PressureLadderPlot? Ladder { get; init; }

    /// <summary>Readings over time, or places on the vessel.</summary>
    public IReadOnlyList<ReportPlot> Plots { get; init; } = [];

    public IReadOnlyList<Photograph> Photographs { get; init; } = [];

    public IReadOnlyList<Working> Workings { get; init; } = [];

    public IReadOnlyList<SignatureEntry> Signatures { get; init; } = [];

    /// <summary>Where the limits stand.</summary>
    public IReadOnlyList<SourceNote> Sources { get; init; } = [];
}

/// <summary>A table as text; the first column names the row.</summary>
/// <param name="Title">Heading.</param>
/// <param name="Heads">Heads of the columns, with units.</param>
/// <param name="Rows">Cells of each row.</param>
public sealed record ReportTable(
    string Title,
    IReadOnlyList<string> Heads,
    IReadOnlyList<IReadOnlyList<string>> Rows
)
{
    /// <summary>Whether all but the first column are numbers.</summary>
    public bool IsNumeric { get; init; } = true;
}

/// <summary>A seam with its caption.</summary>
public sealed record ReportSeam(string Title, SeamPlan Plan, string Caption);

/// <summary>A plot with its heading and what its signs mean.</summary>
public sealed record ReportPlot(string Title, XyPlot Plot, string Key);
