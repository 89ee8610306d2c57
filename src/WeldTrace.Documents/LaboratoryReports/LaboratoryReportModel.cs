using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Traveler;

namespace WeldTrace.Documents.LaboratoryReports;

/// <summary>The report of one examination or laboratory test.</summary>
public sealed record LaboratoryReportModel
{
    public required DocumentStamp Stamp { get; init; }

    /// <summary>Address of the record, printed as a QR code.</summary>
    public required string RecordAddress { get; init; }

    /// <summary>What was tested, for instance <c>Section of J1</c>.</summary>
    public required string Title { get; init; }

    public required StateMark Verdict { get; init; }

    /// <summary>How the verdict follows.</summary>
    public string? Explanation { get; init; }

    /// <summary>Why it does not count, when it was withdrawn; null otherwise.</summary>
    public string? Withdrawn { get; init; }

    public IReadOnlyList<LabelledValue> Particulars { get; init; } = [];

    public IReadOnlyList<string> UncheckedLimits { get; init; } = [];

    public IReadOnlyList<Photograph> Pictures { get; init; } = [];

    public IReadOnlyList<MeasurementLine> Measurements { get; init; } = [];

    /// <summary>Further tables, for instance of specimens.</summary>
    public IReadOnlyList<ReportTable> Tables { get; init; } = [];

    public IReadOnlyList<ReportPlot> Plots { get; init; } = [];

    /// <summary>Seams with the place of the cut or specimen.</summary>
    public IReadOnlyList<ReportSeam> Seams { get; init; } = [];

    /// <summary>What was replaced or struck out before it was signed.</summary>
    public IReadOnlyList<string> Replaced { get; init; } = [];

    public IReadOnlyList<ReportInstrument> Instruments { get; init; } = [];

    public IReadOnlyList<ReportPerson> People { get; init; } = [];

    public IReadOnlyList<SignatureEntry> Signatures { get; init; } = [];
}

/// <summary>A table of texts; numbers carry their unit in the head.</summary>
/// <param name="Title">Its heading.</param>
/// <param name="Columns">Heads of the columns.</param>
/// <param name="Rows">Cells, as many as columns.</param>
public sealed record ReportTable(
    string Title,
    IReadOnlyList<string> Columns,
    IReadOnlyList<IReadOnlyList<string>> Rows
);

/// <summary>A plot with its caption.</summary>
public sealed record ReportPlot(string Title, XyPlot Plot, string Caption);

/// <summary>A seam with its caption.</summary>
public sealed record ReportSeam(string Title, SeamPlan Plan, string Caption);

/// <summary>An instrument as it stood on the day.</summary>
public sealed record ReportInstrument(string Mark, string Measures, string CalibratedUntil);

/// <summary>Somebody who tested, with the certificate that allowed it.</summary>
public sealed record ReportPerson(string Name, string Did, string Certificate);
