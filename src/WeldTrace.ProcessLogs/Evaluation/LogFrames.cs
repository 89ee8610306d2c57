namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Steps through a log chunk by chunk. Numbers are last digits: whole, so that sums of them are exact.</summary>
internal sealed class LogFrames
{
    private readonly ProcessLog _log;
    private readonly ISampleSource _samples;
    private readonly SiConversion[] _conversions;
    private readonly double[][] _digits;
    private readonly int[] _held;
    private int _frame = -1;

    public LogFrames(ProcessLog log, ISampleSource samples)
    {
        (_log, _samples) = (log, samples);
        _conversions = [.. log.Header.Columns.Select(c => c.Conversion)];
        _digits = [.. log.Header.Columns.Select(_ => Array.Empty<double>())];
        _held = new int[_digits.Length];
        Array.Fill(_held, -1);
    }

    /// <summary>Index in the log of the first sample of this frame.</summary>
    public long First { get; private set; }

    /// <summary>Samples in this frame.</summary>
    public int Count { get; private set; }

    /// <summary>The chunk of a column in this frame.</summary>
    public EncodedChunk Chunk(LogColumn column) =>
        _log.Chunks[(_frame * _digits.Length) + column.Ordinal];

    /// <summary>The numbers of this frame in last digits; as logged for a column that is no fixed decimal.</summary>
    public ReadOnlySpan<double> Digits(LogColumn column)
    {
        ref var digits = ref _digits[column.Ordinal];
        if (_held[column.Ordinal] != _frame)
        {
            digits = digits.Length < Count ? new double[Count] : digits;
            var block = _samples.Get(_frame, column.Ordinal);
            if (column.IsFixedDecimal)
            {
                block.CopyDigitsTo(digits, column.Decimals);
            }
            else
            {
                block.CopyValuesTo(digits);
            }

            _held[column.Ordinal] = _frame;
        }

        return digits.AsSpan(0, Count);
    }

    /// <summary>The same as whole numbers, as they are kept; none for a column that is no fixed decimal, or where a frame has fewer decimals than the column.</summary>
    public ReadOnlySpan<int> Whole(LogColumn column)
    {
        var block = _samples.Get(_frame, column.Ordinal);
        return block.IsFixedDecimal && column.IsFixedDecimal && block.Decimals == column.Decimals
            ? block.Codes
            : [];
    }

    /// <summary>The numbers of this frame in SI.</summary>
    public void CopySi(LogColumn column, Span<double> si) =>
        _conversions[column.Ordinal].Convert(Digits(column), si);

    /// <summary>The numbers of this frame in SI, in memory that is used again.</summary>
    public Span<double> Si(LogColumn column, ref double[] room)
    {
        var si = Room(ref room);
        CopySi(column, si);
        return si;
    }

    /// <summary>The numbers of this frame in SI, within their last bits.</summary>
    public Span<double> NearlySi(LogColumn column, ref double[] room)
    {
        var si = Room(ref room);
        _conversions[column.Ordinal].ConvertNearly(Digits(column), si);
        return si;
    }

    /// <summary>As many numbers as this frame has, in memory that is used again.</summary>
    public Span<double> Room(ref double[] room)
    {
        room = room.Length < Count ? new double[Count] : room;
        return room.AsSpan(0, Count);
    }

    public bool MoveNext()
    {
        var next = (_frame + 1) * _digits.Length;
        if (next >= _log.Chunks.Count)
        {
            return false;
        }

        First += Count;
        Count = _log.Chunks[next].Count;
        _frame++;
        return true;
    }
}
