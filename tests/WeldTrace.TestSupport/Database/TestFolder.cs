namespace WeldTrace.TestSupport.Database;

/// <summary>
/// A folder directly below the root of temporary ones. The usual calls for temporary folders make one of mode 700, which a database
/// server that stepped down from root cannot walk through.
/// </summary>
public sealed class TestFolder : IDisposable
{
    private const string Prefix = "weldtrace-tests-";
    private static readonly TimeSpan _abandonedAfter = TimeSpan.FromHours(3);

    public TestFolder(string suffix = "")
    {
        var id = Guid.CreateVersion7(TimeProvider.System.GetUtcNow());
        Path = System.IO.Path.Combine(Root, $"{Prefix}{id:N}{suffix}");
    }

    /// <summary>Where the folders are made.</summary>
    public static string Root { get; } =
        Environment.GetEnvironmentVariable("WELDTRACE_TEST_FOLDER") is { Length: > 0 } given
            ? given
            : "/tmp";

    public string Path { get; }

    /// <summary>Removes what test runs that were killed left behind.</summary>
    public static void RemoveAbandoned()
    {
        var limit = TimeProvider.System.GetUtcNow() - _abandonedAfter;
        foreach (var folder in new DirectoryInfo(Root).EnumerateDirectories(Prefix + "*"))
        {
            if (folder.LastWriteTimeUtc < limit)
            {
                Remove(folder.FullName);
            }
        }
    }

    public void Dispose() => Remove(Path);

    private static void Remove(string path)
    {
        try
        {
            Directory.Delete(path, recursive: true);
        }
        catch (Exception left) when (left is IOException or UnauthorizedAccessException)
        {
            // Another user's folder, or one that a second run removes at the same time.
        }
    }
}
