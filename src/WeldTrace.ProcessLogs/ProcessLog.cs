using System.Text.Json.Serialization;
using WeldTrace.ProcessLogs.Storage;

namespace WeldTrace.ProcessLogs;

/// <summary>One kept column of a log.</summary>
/// <param name="Ordinal">Place among the kept columns, from 0; the key of its chunks.</param>
/// <param name="Name">Name in the header.</param>
/// <param name="Channel">What it measures.</param>
/// <param name="Unit">Unit of the numbers as logged.</param>
/// <param name="Factor">Multiplies each number before it is converted to SI, for instance -1.</param>
/// <param name="Decimals">Most decimals of any number in the column.</param>
/// <param name="IsFixedDecimal">Whether every number is kept as a whole number of last digits.</param>
/// <param name="IsUniform">Whether every number was written with the same number of decimals.</param>
public sealed record LogColumn(
    int Ordinal,
    string Name,
    LogChannel Channel,
    string Unit,
    double Factor,
    int Decimals,
    bool IsFixedDecimal,
    bool IsUniform = false
)
{
    /// <summary>Unit of the numbers as logged.</summary>
    [JsonIgnore]
    public LogUnit LoggedUnit =>
        LogChannels.QuantityOf(Channel) == LogQuantity.None
            ? LogUnit.None
            : LogUnits.Find(Unit)
                ?? throw new InvalidDataException($"The unit '{Unit}' is not known.");

    /// <summary>Unit of the numbers in SI; the unit as logged for a channel without a quantity.</summary>
    [JsonIgnore]
    public string SiUnit =>
        LogChannels.QuantityOf(Channel) is var quantity && quantity == LogQuantity.None
            ? Unit
            : LogUnits.SiUnitOf(quantity);

    /// <summary>Turns a number as logged into the SI unit.</summary>
    public double ToSi(double asLogged) => (asLogged * ScaleToSi) + LoggedUnit.OffsetSi;

    /// <summary>The way from last digits to SI; taken once where many numbers are converted.</summary>
    [JsonIgnore]
    internal SiConversion Conversion => new(DigitsPerUnit, ScaleToSi, LoggedUnit.OffsetSi);

    /// <summary>Last digits in one unit as logged; 1 for a column that is no fixed decimal.</summary>
    [JsonIgnore]
    internal double DigitsPerUnit => IsFixedDecimal ? PowersOfTen.AsDouble(Decimals) : 1;

    /// <summary>Turns last digits into the SI unit.</summary>
    internal double DigitsToSi(double digits) => ToSi(digits / DigitsPerUnit);

    /// <summary>SI units per unit as logged, sign included.</summary>
    [JsonIgnore]
    public double ScaleToSi => Factor * LoggedUnit.Factor;
}

/// <summary>Everything about a log but its samples; plain and serialisable.</summary>
public sealed record LogHeader
{
    public required IReadOnlyList<LogColumn> Columns { get; init; }

    public required LogDialect Dialect { get; init; }

    /// <summary>The lines before the data, byte for byte (as UTF-8), byte order mark included.</summary>
    public required byte[] Preamble { get; init; }

    public required long SampleCount { get; init; }

    public required double StartSeconds { get; init; }

    public required double DurationSeconds { get; init; }

    /// <summary>The first time stamp when time is written as date and time of day; else none.</summary>
    public LogStart? Start { get; init; }

    /// <summary>SHA-256 of the file as received, lower-case hexadecimal.</summary>
    public required string OriginalSha256 { get; init; }

    public required long OriginalLengthBytes { get; init; }

    /// <summary>SHA-256 of the CSV rendered again from the kept samples, lower-case hexadecimal.</summary>
    public required string CsvSha256 { get; init; }

    /// <summary>Whether the rendered CSV is the file as received, byte for byte.</summary>
    public bool CsvIsOriginal => CsvSha256 == OriginalSha256;

    /// <summary>Mean time between two samples.</summary>
    public double SamplePeriodSeconds => DurationSeconds / Math.Max(1, SampleCount - 1);
}

public enum ChunkCodec
{
    /// <summary>32-bit differences, bytes shuffled, zstd.</summary>
    Int32Zstd = 1,

    /// <summary>64-bit floating point, bytes shuffled, zstd.</summary>
    Float64Zstd = 2,
}

/// <summary>Up to 16,384 samples of one column, compressed; minimum, maximum and sum are in the unit as logged.</summary>
/// <param name="Ordinal">The column.</param>
/// <param name="Index">Place of the chunk in the column, from 0.</param>
/// <param name="Count">Samples in the chunk.</param>
/// <param name="MinimumAsLogged">Smallest sample.</param>
/// <param name="MaximumAsLogged">Largest sample.</param>
/// <param name="SumAsLogged">Sum of the samples.</param>
/// <param name="Codec">How the bytes are to be read.</param>
/// <param name="Bytes">The compressed samples; the first byte is the version.</param>
public sealed record EncodedChunk(
    int Ordinal,
    int Index,
    int Count,
    double MinimumAsLogged,
    double MaximumAsLogged,
    double SumAsLogged,
    ChunkCodec Codec,
    ReadOnlyMemory<byte> Bytes
);

/// <summary>Smallest and largest sample of each bucket of a column, compressed; for charts.</summary>
/// <param name="Ordinal">The column.</param>
/// <param name="SamplesPerBucket">Bucket size: 256, and four times that for each further level.</param>
/// <param name="Count">Buckets.</param>
/// <param name="Bytes">The compressed pairs.</param>
public sealed record PyramidLevel(
    int Ordinal,
    int SamplesPerBucket,
    int Count,
    ReadOnlyMemory<byte> Bytes
);

/// <summary>A log as it is kept.</summary>
/// <param name="Header">Everything but the samples.</param>
/// <param name="Chunks">The samples: by index, and within one index by ordinal.</param>
/// <param name="Pyramid">Levels for charts, by column and bucket size.</param>
public sealed record ProcessLog(
    LogHeader Header,
    IReadOnlyList<EncodedChunk> Chunks,
    IReadOnlyList<PyramidLevel> Pyramid
);
