using System.Text;

namespace WeldTrace.ProcessLogs.Reading;

/// <summary>A log as a stream of UTF-8 text with its dialect, in a buffer of fixed size.</summary>
internal sealed class LogSource : IDisposable
{
    private const int BufferSize = 256 * 1024;

    private readonly MeasuredStream _measured;
    private readonly byte[] _buffer = new byte[BufferSize];
    private Stream _text;
    private int _start;
    private int _end;
    private UnpackedStream? _unpacked;

    private LogSource(MeasuredStream measured) => (_measured, _text) = (measured, measured);

    public LogDialect Dialect { get; private set; } = new();

    /// <summary>Text read and not yet used.</summary>
    public ReadOnlySpan<byte> Pending => _buffer.AsSpan(_start, _end - _start);

    /// <summary>Where the data start in <see cref="Pending"/>, before any of it was used.</summary>
    public int StartOfData
    {
        get
        {
            var mark = Dialect.HasByteOrderMark ? 3 : 0;
            return mark + TextLines.StartOf(Pending[mark..], Dialect.FirstDataLine);
        }
    }

    public bool IsEnded { get; private set; }

    public bool IsFull => _start == 0 && _end == BufferSize;

    public bool IsOverLimit => _measured.IsOverLimit || _unpacked is { IsOverLimit: true };

    public long BytesRead => _measured.BytesRead;

    public string Sha256() => _measured.Sha256();

    public static async Task<(LogSource Source, LogProblem? Problem)> OpenAsync(
        Stream stream,
        LogReadOptions options,
        CancellationToken cancellation
    )
    {
        var source = new LogSource(new MeasuredStream(stream, options.LengthLimitBytes));
        if (stream.CanSeek && stream.Length - stream.Position > options.LengthLimitBytes)
        {
            return (source, Problem.TooLarge(options.LengthLimitBytes));
        }

        await source.FillAsync(cancellation);
        return (source, await source.RecogniseAsync(options, cancellation));
    }

    /// <summary>Drops used text and reads until the buffer is full or the text ends.</summary>
    public async Task FillAsync(CancellationToken cancellation)
    {
        _buffer.AsSpan(_start, _end - _start).CopyTo(_buffer);
        (_start, _end) = (0, _end - _start);
        while (_end < BufferSize && !IsEnded)
        {
            var read = await _text.ReadAsync(_buffer.AsMemory(_end), cancellation);
            _end += read;
            IsEnded = read == 0;
        }
    }

    public void Use(int bytes) => _start += bytes;

    public void Dispose()
    {
        _text.Dispose();
        _unpacked?.Dispose();
        _measured.Dispose();
    }

    private async Task<LogProblem?> RecogniseAsync(
        LogReadOptions options,
        CancellationToken cancellation
    )
    {
        if (IsOverLimit)
        {
            return Problem.TooLarge(options.LengthLimitBytes);
        }

        var packing = ContentKind.PackingOf(Pending);
        await UnpackAsync(packing, options.LengthLimitBytes, cancellation);
        if (IsOverLimit)
        {
            return Problem.TooLarge(options.LengthLimitBytes);
        }

        if (ContentKind.NameOf(Pending) is { } name)
        {
            return Problem.Binary(name);
        }

        if (ContentKind.EncodingOf(Pending) is not { } encoding)
        {
            return Problem.Binary("no text");
        }

        await DecodeAsync(encoding, cancellation);
        if (IsEnded && IsBlank(Pending))
        {
            return Problem.Empty();
        }

        var dialect = DialectGuess.From(Pending, IsEnded);
        Dialect = (dialect ?? Dialect) with { Encoding = encoding, Packing = packing };
        return dialect is null ? Problem.NoDataRows() : null;
    }

    private static bool IsBlank(ReadOnlySpan<byte> text)
    {
        var withoutMark = text is [0xEF, 0xBB, 0xBF, ..] ? text[3..] : text;
        return withoutMark.Trim(" \t\r\n"u8).IsEmpty;
    }

    private async Task UnpackAsync(
        LogPacking packing,
        long limitBytes,
        CancellationToken cancellation
    )
    {
        if (packing == LogPacking.None)
        {
            return;
        }

        var packed = new PrefixedStream(Pending.ToArray(), _measured);
        _text = _unpacked = UnpackedStream.Open(packing, packed, _measured, limitBytes);
        (_start, _end, IsEnded) = (0, 0, false);
        await FillAsync(cancellation);
    }

    private async Task DecodeAsync(LogEncoding encoding, CancellationToken cancellation)
    {
        if (encoding != LogEncoding.Utf8)
        {
            var raw = new PrefixedStream(Pending.ToArray(), _text);
            _text = Encoding.CreateTranscodingStream(
                raw,
                encoding.ToText(),
                Encoding.UTF8,
                leaveOpen: true
            );
            (_start, _end, IsEnded) = (0, 0, false);
            await FillAsync(cancellation);
        }
    }
}
