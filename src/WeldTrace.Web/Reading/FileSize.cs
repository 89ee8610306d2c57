using System.Globalization;

namespace WeldTrace.Web.Reading;

/// <summary>Sizes of files, as shown.</summary>
public static class FileSize
{
    public static string Show(long bytes) =>
        bytes < 1_000_000
            ? string.Create(CultureInfo.InvariantCulture, $"{Math.Max(1, bytes / 1000)} kB")
            : string.Create(CultureInfo.InvariantCulture, $"{bytes / 1e6:F1} MB");
}
