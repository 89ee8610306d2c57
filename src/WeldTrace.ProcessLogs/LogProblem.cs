namespace WeldTrace.ProcessLogs;

public enum LogProblemCode
{
    EmptyFile,
    TooLarge,
    BinaryContent,
    DamagedArchive,
    UnreadableText,
    NoDataRows,
    TooFewRows,
    LineTooLong,
    MappingInvalid,
    MissingColumn,
    RepeatedColumn,
    RenamedColumn,
    UnknownColumn,
    UnknownUnit,
    UnitChanged,
    WrongFieldCount,
    TruncatedLine,
    MixedDecimalMark,
    NotANumber,
    MissingValue,
    NotFinite,
    DuplicateTime,
    TimeBackwards,
    NoTraverse,
    Gap,
}

/// <summary>One reason why a log cannot be taken: what is wrong, where, and how to mend it.</summary>
/// <param name="Code">Kind of problem.</param>
/// <param name="Sentence">What is wrong and where, one plain sentence.</param>
/// <param name="Remedy">How to mend it, one plain sentence.</param>
public sealed record LogProblem(LogProblemCode Code, string Sentence, string Remedy)
{
    /// <summary>Line of the file, counted from 1 as a text editor does; none when it concerns the whole file.</summary>
    public long? Line { get; init; }

    /// <summary>Name of the column; none when it concerns the whole line or file.</summary>
    public string? Column { get; init; }

    /// <summary>Columns expected and found side by side; empty unless columns do not agree.</summary>
    public IReadOnlyList<ColumnComparison> Comparison { get; init; } = [];
}

public enum ColumnAgreement
{
    Same,
    Missing,
    Repeated,
    Renamed,
    Unknown,
}

/// <summary>One column of the remembered mapping beside one column of the file.</summary>
public sealed record ColumnComparison(string? Expected, string? Found, ColumnAgreement Agreement);
