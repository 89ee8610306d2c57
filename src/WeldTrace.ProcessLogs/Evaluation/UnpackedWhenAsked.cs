namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Unpacks only what is asked for.</summary>
internal sealed class UnpackedWhenAsked(ProcessLog log) : ISampleSource, IDisposable
{
    private readonly ChannelCodec _codec = new();
    private readonly (int Frame, SampleBlock Block)[] _blocks =
    [
        .. log.Header.Columns.Select(_ => (-1, new SampleBlock())),
    ];

    public SampleBlock Get(int frame, int ordinal)
    {
        ref var held = ref _blocks[ordinal];
        if (held.Frame != frame)
        {
            var chunk = log.Chunks[(frame * _blocks.Length) + ordinal];
            _codec.Decode(chunk.Bytes.Span, held.Block);
            held.Frame = frame;
        }

        return held.Block;
    }

    public void Dispose() => _codec.Dispose();
}
