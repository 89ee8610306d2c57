namespace WeldTrace.ProcessLogs.Reading;

/// <summary>Lines of the first bytes of a file, counted from 1.</summary>
internal static class TextLines
{
    /// <summary>Start of a line in the bytes; the length when there are fewer lines.</summary>
    public static int StartOf(ReadOnlySpan<byte> text, int line)
    {
        var start = 0;
        for (var passed = 1; passed < line; passed++)
        {
            var end = text[start..].IndexOf((byte)'\n');
            if (end < 0)
            {
                return text.Length;
            }

            start += end + 1;
        }

        return start;
    }

    /// <summary>A line without its end; empty when there is no such line.</summary>
    public static ReadOnlySpan<byte> Get(ReadOnlySpan<byte> text, int line)
    {
        if (line < 1)
        {
            return [];
        }

        var rest = text[StartOf(text, line)..];
        var end = rest.IndexOf((byte)'\n');
        var bare = end < 0 ? rest : rest[..end];
        return bare is [.., (byte)'\r'] ? bare[..^1] : bare;
    }
}
