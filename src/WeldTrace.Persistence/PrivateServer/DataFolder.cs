namespace WeldTrace.Persistence.PrivateServer;

/// <summary>The data folder, held by this process alone from <see cref="Open"/> until it is disposed.</summary>
internal sealed class DataFolder : IDisposable
{
    private const int WouldBlock = 11;
    private const int NoSpaceOnDevice = 28;
    private readonly FileStream _lock;

    private DataFolder(string path, FileStream held)
    {
        Path = path;
        _lock = held;
    }

    public string Path { get; }

    public string Cluster => In(Path, "cluster");

    public string UnfinishedCluster => In(Path, "cluster.new");

    public string OwnerPasswordFile => In(Path, "db-password");

    public string ApplicationPasswordFile => In(Path, "app-password");

    public bool HasCluster => File.Exists(In(Cluster, "PG_VERSION"));

    public static DataFolder Open(string path)
    {
        try
        {
            var isFresh =
                !Directory.Exists(path) || !Directory.EnumerateFileSystemEntries(path).Any();
            Directory.CreateDirectory(path);
            if (isFresh || File.Exists(In(path, "app.lock")))
            {
                PrivateFile.SetMode(
                    path,
                    Environment.IsPrivilegedProcess
                        ? PrivateFile.WalkableFolder
                        : PrivateFile.OwnerFolder
                );
            }

            return new DataFolder(path, Hold(path));
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException)
        {
            throw Explain(path, cause);
        }
    }

    /// <summary>The folder of the keys of sessions, closed to other accounts although its parent can be walked.</summary>
    public static void MakeKeysFolder(string path)
    {
        try
        {
            var keys = Directory.CreateDirectory(In(path, "keys"));
            PrivateFile.SetMode(keys.FullName, PrivateFile.OwnerFolder);
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException)
        {
            throw Explain(path, cause);
        }
    }

    /// <summary>Turns a fault of the file system into a message that says how to mend it.</summary>
    public static DatabaseStartException Explain(string path, Exception cause) =>
        cause switch
        {
            IOException { HResult: NoSpaceOnDevice } => DatabaseStartException.NoSpaceLeft(
                path,
                cause
            ),
            IOException { HResult: WouldBlock } => new DatabaseStartException(
                DatabaseStartProblem.FolderInUse,
                "The data folder is already in use by another process",
                path,
                "Stop the other WeldTrace that runs on it, or name another folder in Database:Folder.",
                cause
            ),
            _ => new DatabaseStartException(
                DatabaseStartProblem.FolderNotUsable,
                $"The data folder cannot be written: {cause.Message}",
                path,
                "Give the account that runs WeldTrace the right to write there, or name another folder in Database:Folder.",
                cause
            ),
        };

    public void Dispose() => _lock.Dispose();

    private static string In(string folder, string name) => System.IO.Path.Combine(folder, name);

    private static FileStream Hold(string path)
    {
        var name = In(path, "app.lock");
        var held = new FileStream(
            name,
            FileMode.OpenOrCreate,
            FileAccess.ReadWrite,
            FileShare.None
        );
        PrivateFile.SetMode(name, PrivateFile.OwnerOnly);
        return held;
    }
}
