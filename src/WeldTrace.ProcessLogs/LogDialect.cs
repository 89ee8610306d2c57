namespace WeldTrace.ProcessLogs;

public enum LogEncoding
{
    Utf8,
    Utf16LittleEndian,
    Utf16BigEndian,

    /// <summary>One byte per character, ISO 8859-1; for logs whose header holds a degree sign.</summary>
    Latin1,
}

/// <summary>How the file of a log was packed.</summary>
public enum LogPacking
{
    None,
    Gzip,
    Zstd,
}

/// <summary>How a log is written down. Lines are counted from 1; zero means that there is no such line.</summary>
public sealed record LogDialect
{
    public char Delimiter { get; init; } = ',';

    public char DecimalMark { get; init; } = '.';

    public int HeaderLine { get; init; } = 1;

    public int UnitLine { get; init; }

    public int FirstDataLine { get; init; } = 2;

    public LogEncoding Encoding { get; init; }

    /// <summary>How the file was packed; the CSV that is written again is not.</summary>
    public LogPacking Packing { get; init; }

    public bool HasByteOrderMark { get; init; }

    /// <summary>Whether lines end in carriage return and line feed instead of line feed alone.</summary>
    public bool HasCarriageReturns { get; init; }

    /// <summary>Whether the last line ends like the others.</summary>
    public bool EndsWithNewLine { get; init; } = true;
}
