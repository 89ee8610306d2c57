namespace WeldTrace.ProcessLogs.Reading;

/// <summary>Gives bytes that were already read once more, and then the rest.</summary>
internal sealed class PrefixedStream(ReadOnlyMemory<byte> prefix, Stream rest) : ReadOnlyStream
{
    private ReadOnlyMemory<byte> _prefix = prefix;

    public override int Read(Span<byte> buffer) =>
        _prefix.IsEmpty ? rest.Read(buffer) : TakePrefix(buffer);

    public override async ValueTask<int> ReadAsync(
        Memory<byte> buffer,
        CancellationToken cancellationToken = default
    ) =>
        _prefix.IsEmpty ? await rest.ReadAsync(buffer, cancellationToken) : TakePrefix(buffer.Span);

    private int TakePrefix(Span<byte> buffer)
    {
        var taken = Math.Min(buffer.Length, _prefix.Length);
        _prefix.Span[..taken].CopyTo(buffer);
        _prefix = _prefix[taken..];
        return taken;
    }
}
