namespace WeldTrace.Web.Reading;

/// <summary>Typed text as part of a database pattern: its wildcards mean themselves.</summary>
public static class LikeText
{
    /// <summary>What the pattern's wildcards are escaped with; the database must be told.</summary>
    public const string EscapeMark = @"\";

    /// <summary>Pattern for texts that contain what was typed.</summary>
    public static string Containing(string text) => "%" + Escape(text) + "%";

    public static string Escape(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Replace(@"\", @"\\", StringComparison.Ordinal)
            .Replace("%", @"\%", StringComparison.Ordinal)
            .Replace("_", @"\_", StringComparison.Ordinal);
    }
}
