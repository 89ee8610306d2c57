namespace WeldTrace.Persistence.PrivateServer;

/// <summary>How the application's own PostgreSQL server is run.</summary>
public sealed record PrivateServerSettings
{
    public PrivateServerSettings(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        Folder = Path.GetFullPath(folder);
    }

    /// <summary>The data folder; it holds the cluster, the passwords and the lock file.</summary>
    public string Folder { get; }

    /// <summary>The folder of <c>initdb</c> and <c>postgres</c>; null looks in Debian's places and in PATH.</summary>
    public string? BinFolder { get; init; }

    /// <summary>False gives up safety against a power cut for speed: for tests only.</summary>
    public bool IsDurable { get; init; } = true;

    /// <summary>Listens on 127.0.0.1 and a free port instead of a socket in the cluster folder.</summary>
    public bool UsesLoopback { get; init; }

    /// <summary>How many sessions the server accepts at once.</summary>
    public int MaximumSessions { get; init; } = 100;

    /// <summary>The folder used when none is named.</summary>
    public static string DefaultFolder()
    {
        if (Environment.IsPrivilegedProcess)
        {
            return "/var/lib/weldtrace";
        }

        var shared = Environment.GetFolderPath(
            Environment.SpecialFolder.LocalApplicationData,
            Environment.SpecialFolderOption.DoNotVerify
        );
        return Path.Combine(shared, "weldtrace");
    }
}
