namespace WeldTrace.Documents.Labels;

/// <summary>A sheet of labels to cut out, each with a QR code.</summary>
public sealed record LabelSheetModel
{
    public required DocumentStamp Stamp { get; init; }

    /// <summary>What the labels are for, for instance <c>tools</c>.</summary>
    public required string Subject { get; init; }

    public IReadOnlyList<Label> Labels { get; init; } = [];
}

/// <summary>One label.</summary>
/// <param name="Mark">Mark or serial, printed large.</param>
/// <param name="Lines">Up to three short lines below it.</param>
/// <param name="Address">Absolute address of the record's page; the QR code holds it.</param>
public sealed record Label(string Mark, IReadOnlyList<string> Lines, string Address);
