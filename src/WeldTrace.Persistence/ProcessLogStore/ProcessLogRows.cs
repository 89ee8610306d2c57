namespace WeldTrace.Persistence.ProcessLogStore;

/// <summary>The header of a run's process log.</summary>
public sealed class ProcessLogRow
{
    public required Guid RunId { get; init; }

    public required string Header { get; init; }

    /// <summary>The bytes as brought, or packed by zstd when they are many, only when the stored samples do not give them back.</summary>
    public string? OriginalAttachment { get; init; }

    /// <summary>The archive whose bundle holds the samples; null while they are here.</summary>
    public Guid? ArchiveId { get; init; }
}

/// <summary>A run of samples of one channel, encoded.</summary>
public sealed class ProcessLogChunkRow
{
    public required Guid RunId { get; init; }

    public required int Ordinal { get; init; }

    public required int Position { get; init; }

    public required int Count { get; init; }

    public required double Minimum { get; init; }

    public required double Maximum { get; init; }

    public required double Sum { get; init; }

    public required int Codec { get; init; }

    public required byte[] Bytes { get; init; }
}

/// <summary>Minima and maxima of a channel over equal buckets of samples, for charts.</summary>
public sealed class ProcessLogLevelRow
{
    public required Guid RunId { get; init; }

    public required int Ordinal { get; init; }

    public required int SamplesPerBucket { get; init; }

    public required int Count { get; init; }

    public required byte[] Bytes { get; init; }
}
