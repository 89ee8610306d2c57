namespace WeldTrace.Web.Reading;

/// <summary>Typed text as part of a database pattern: its wildcards mean themselves.</summary>
public static class LikeText
{
    public static string Escape(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Replace(@"\", @"\\", StringComparison.Ordinal)
            .Replace("%", @"\%", StringComparison.Ordinal)
            .Replace("_", @"\_", StringComparison.Ordinal);
    }
}
