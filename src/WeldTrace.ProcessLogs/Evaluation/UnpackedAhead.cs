namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Unpacks all columns of the next frame on a second thread while one is judged; never more than one ahead.</summary>
internal sealed class UnpackedAhead : ISampleSource, IDisposable
{
    private readonly ProcessLog _log;
    private readonly ChannelCodec _codec = new();
    private readonly int _frames;
    private SampleBlock[] _shown;
    private SampleBlock[] _next;
    private int _frame = -1;
    private Task _unpacking;

    public UnpackedAhead(ProcessLog log)
    {
        _log = log;
        _frames = log.Chunks.Count / log.Header.Columns.Count;
        _shown = [.. log.Header.Columns.Select(_ => new SampleBlock())];
        _next = [.. log.Header.Columns.Select(_ => new SampleBlock())];
        _unpacking = Unpack(0);
    }

    public SampleBlock Get(int frame, int ordinal)
    {
        while (_frame < frame)
        {
            _unpacking.GetAwaiter().GetResult();
            (_shown, _next) = (_next, _shown);
            _unpacking = Unpack(++_frame + 1);
        }

        return _shown[ordinal];
    }

    public void Dispose()
    {
        // A damaged chunk was told to whoever asked for it; here only the codec has to be free.
        _unpacking.ContinueWith(_ => { }, TaskScheduler.Default).GetAwaiter().GetResult();
        _codec.Dispose();
    }

    private Task Unpack(int frame) =>
        frame >= _frames
            ? Task.CompletedTask
            : Task.Run(() =>
            {
                foreach (var block in _next.Index())
                {
                    var chunk = _log.Chunks[(frame * _next.Length) + block.Index];
                    _codec.Decode(chunk.Bytes.Span, block.Item);
                }
            });
}
