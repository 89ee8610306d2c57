namespace WeldTrace.Documents.Book;

/// <summary>Everything that the history book of a vessel prints.</summary>
public sealed record HistoryBookModel
{
    public required DocumentStamp Stamp { get; init; }

    public required string Serial { get; init; }

    /// <summary>Absolute address of the vessel's page; printed as a QR code and in text.</summary>
    public required string RecordAddress { get; init; }

    public required StateMark State { get; init; }

    /// <summary>What else stands on the cover, for instance design and production lot.</summary>
    public IReadOnlyList<LabelledValue> Particulars { get; init; } = [];

    /// <summary>What the reader should know before anything else; empty when there is nothing.</summary>
    public IReadOnlyList<string> Notices { get; init; } = [];

    public required IReadOnlyList<BookChapter> Chapters { get; init; }
}
