namespace WeldTrace.ProcessLogs.Reading;

/// <summary>Splits one line into fields; a field in double quotes may hold the delimiter.</summary>
internal ref struct FieldSplitter(ReadOnlySpan<byte> line, byte delimiter)
{
    private const byte Quote = (byte)'"';
    private readonly ReadOnlySpan<byte> _line = line;
    private int _next;

    public bool TryNext(out ReadOnlySpan<byte> field)
    {
        if (_next > _line.Length)
        {
            field = default;
            return false;
        }

        var rest = _line[_next..];
        var length = EndOf(rest);
        field = rest[..length];
        _next += length + 1;
        return true;
    }

    public static int Count(ReadOnlySpan<byte> line, byte delimiter)
    {
        var splitter = new FieldSplitter(line, delimiter);
        var count = 0;
        while (splitter.TryNext(out _))
        {
            count++;
        }

        return count;
    }

    /// <summary>The field without surrounding spaces and quotes.</summary>
    public static ReadOnlySpan<byte> Bare(ReadOnlySpan<byte> field)
    {
        var bare = field.Trim(" \t"u8);
        return bare.Length >= 2 && bare[0] == Quote && bare[^1] == Quote
            ? bare[1..^1].Trim(" \t"u8)
            : bare;
    }

    private readonly int EndOf(ReadOnlySpan<byte> rest)
    {
        var start = rest.IndexOfAnyExcept((byte)' ');
        if (start >= 0 && rest[start] == Quote)
        {
            var close = rest[(start + 1)..].IndexOf(Quote);
            var from = close < 0 ? 0 : start + close + 2;
            var after = rest[from..].IndexOf(delimiter);
            return after < 0 ? rest.Length : from + after;
        }

        var end = rest.IndexOf(delimiter);
        return end < 0 ? rest.Length : end;
    }
}
