using System.Text;

namespace WeldTrace.ProcessLogs.Reading;

/// <summary>Text taken from a file, made safe to be shown.</summary>
internal static class LogText
{
    private const int Shown = 32;

    public static string Of(ReadOnlySpan<byte> bytes)
    {
        var text = Encoding.UTF8.GetString(bytes[..Math.Min(bytes.Length, 4 * Shown)]);
        return Of(text);
    }

    public static string Of(string text)
    {
        var shown = text.Length > Shown ? $"{text[..Shown]}…" : text;
        return string.Concat(
            shown.Select(c => char.IsControl(c) || char.IsSurrogate(c) ? '\uFFFD' : c)
        );
    }

    public static string List(IEnumerable<string> names) =>
        string.Join(", ", names.Select(name => $"'{Of(name)}'"));
}
