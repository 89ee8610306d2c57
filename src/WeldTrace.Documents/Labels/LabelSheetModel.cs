namespace WeldTrace.Documents.Labels;

/// <summary>A sheet of labels to cut out, each with a QR code.</summary>
public sealed record LabelSheetModel
{
    public required DocumentStamp Stamp { get; init; }

    /// <summary>What the labels are for, for instance <c>tools</c>.</summary>
    public required string Subject { get; init; }

    /// <summary>How many stand beside each other: 2 where long names must be read, as on badges.</summary>
    public int Columns { get; init; } = 3;

    public IReadOnlyList<Label> Labels { get; init; } = [];
}

/// <summary>One label.</summary>
/// <param name="Mark">Mark or serial, printed large.</param>
/// <param name="Lines">Up to three short lines below it.</param>
/// <param name="Code">What the QR code holds: the absolute address of the record's page, or the word of a badge.</param>
public sealed record Label(string Mark, IReadOnlyList<string> Lines, string Code);
