using System.Globalization;
using WeldTrace.Persistence.Roles;

namespace WeldTrace.Web.Features.Trace.Histories;

/// <summary>Where ordered histories lie, for how long, and how many there may be.</summary>
public sealed class HistorySettings(IConfiguration configuration, DatabaseSettings database)
{
    /// <summary>Most vessels of one order: as many as a production lot may have.</summary>
    public const int MostVessels = 500;

    /// <summary>Most unfinished orders of the site.</summary>
    public const int LongestLine = 10;

    /// <summary>Most unfinished orders of one person.</summary>
    public const int MostOfOnePerson = 3;

    /// <summary>How often the making of an order is begun before it is given up.</summary>
    public const int MostAttempts = 3;

    private const long Mebibyte = 1024 * 1024;

    /// <summary>How long a file can be fetched.</summary>
    public static readonly TimeSpan FileKeptFor = TimeSpan.FromDays(7);

    /// <summary>How long an order is shown that has no file.</summary>
    public static readonly TimeSpan OrderKeptFor = TimeSpan.FromDays(30);

    public string Folder { get; } = Path.Combine(database.Folder, "histories");

    /// <summary>Bytes of the disk that stay free: the database writes to the same one.</summary>
    public long LeaveFree { get; } =
        long.TryParse(
            configuration["Histories:LeaveFreeMegabytes"],
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var megabytes
        )
            ? Math.Min(megabytes, long.MaxValue / Mebibyte) * Mebibyte
            : 1024 * Mebibyte;
}
