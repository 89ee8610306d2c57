namespace WeldTrace.Documents.RecordSheets;

/// <summary>A report or certificate about one record, in parts of values, tables and sentences. Missing values are null or empty.</summary>
public sealed record RecordSheetModel
{
    public required DocumentStamp Stamp { get; init; }

    /// <summary>Absolute address of the record's page; printed as a QR code and in text.</summary>
    public required string RecordAddress { get; init; }

    /// <summary>For instance <c>Inspection certificate NR10-0001</c>.</summary>
    public required string Title { get; init; }

    /// <summary>What it is, in a line.</summary>
    public required string Subtitle { get; init; }

    public required StateMark State { get; init; }

    /// <summary>What keeps it from being whole, printed as a notice; empty when nothing does.</summary>
    public IReadOnlyList<string> Notices { get; init; } = [];

    /// <summary>Values beside the QR code.</summary>
    public IReadOnlyList<LabelledValue> Particulars { get; init; } = [];

    public IReadOnlyList<SheetPart> Parts { get; init; } = [];

    /// <summary>Tables of limits that nobody has compared with the site's own copy of their source.</summary>
    public IReadOnlyList<string> UncheckedLimits { get; init; } = [];

    /// <summary>Signatures; null for a list that nobody signs.</summary>
    public IReadOnlyList<SignatureEntry>? Signatures { get; init; } = [];
}

/// <summary>A part of a sheet.</summary>
/// <param name="Title">Heading.</param>
public sealed record SheetPart(string Title)
{
    public IReadOnlyList<string> Sentences { get; init; } = [];

    public IReadOnlyList<LabelledValue> Values { get; init; } = [];

    public SheetTable? Table { get; init; }
}

/// <summary>A table as text; the first column names the row.</summary>
/// <param name="Heads">Heads of the columns with their share of the width.</param>
/// <param name="Rows">Rows.</param>
public sealed record SheetTable(
    IReadOnlyList<(string Head, double Share)> Heads,
    IReadOnlyList<SheetRow> Rows
);

/// <summary>A row of a table.</summary>
/// <param name="Cells">Cells, as many as there are heads; the last is the state when there is one.</param>
/// <param name="State">State of the row, with its shape, in a last column of its own; null for none.</param>
public sealed record SheetRow(IReadOnlyList<string?> Cells, StateMark? State = null);
