namespace WeldTrace.Web.Reading;

/// <summary>Names of downloaded files, safe on every machine.</summary>
public static class FileNames
{
    public static string Safe(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return string.Concat(
                text.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or '.' ? c : '-')
            )
            .TrimStart('.');
    }
}
