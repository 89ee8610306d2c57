using WeldTrace.ProcessLogs;

namespace WeldTrace.Persistence.ProcessLogStore;

/// <summary>Where a chunk of the time lies; its extremes as logged.</summary>
internal readonly record struct ChunkPlace(int Position, int Count, double Minimum, double Maximum);

/// <summary>The header of a log, the archive that holds its samples if one does, and where in time its chunks lie.</summary>
internal sealed record LogHead(LogHeader Header, Guid? ArchiveId, IReadOnlyList<ChunkPlace> Places)
{
    public LogColumn Time { get; } = Header.Columns.First(c => c.Channel == LogChannel.Time);

    /// <summary>Places in the list of the chunks that hold the first and the last sample between two times.</summary>
    public (int First, int Last) Stretch(double fromSeconds, double toSeconds)
    {
        var (first, last) = (Places.Count - 1, 0);
        for (var i = Places.Count - 1; i >= 0; i--)
        {
            first = Time.ToSi(Places[i].Maximum) >= fromSeconds ? i : first;
            last = last == 0 && Time.ToSi(Places[i].Minimum) <= toSeconds ? i : last;
        }

        return (Math.Min(first, last), last);
    }

    /// <summary>Every chunk of the log; without bytes where none are given.</summary>
    public IReadOnlyList<EncodedChunk> Sparse(
        Dictionary<(int Ordinal, int Position), EncodedChunk> known
    ) =>
        [
            .. Places.SelectMany(place =>
                Header.Columns.Select(column =>
                    known.GetValueOrDefault((column.Ordinal, place.Position))
                    ?? new EncodedChunk(
                        column.Ordinal,
                        place.Position,
                        place.Count,
                        column == Time ? place.Minimum : 0,
                        column == Time ? place.Maximum : 0,
                        0,
                        ChunkCodec.Int32Zstd,
                        default
                    )
                )
            ),
        ];
}
