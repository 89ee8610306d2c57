using WeldTrace.ProcessLogs;

namespace WeldTrace.Benchmarks.Logs;

/// <summary>All samples of a log in memory, so that its judgement is measured without their unpacking.</summary>
internal sealed class AllUnpacked : ISampleSource
{
    private readonly int _columns;
    private readonly SampleBlock[] _blocks;

    public AllUnpacked(ProcessLog log)
    {
        using var codec = new ChannelCodec();
        _columns = log.Header.Columns.Count;
        _blocks = [.. log.Chunks.Select(_ => new SampleBlock())];
        foreach (var (i, chunk) in log.Chunks.Index())
        {
            codec.Decode(chunk.Bytes.Span, _blocks[i]);
        }
    }

    public SampleBlock Get(int frame, int ordinal) => _blocks[(frame * _columns) + ordinal];
}
