namespace WeldTrace.Persistence.PrivateServer;

/// <summary>Files and folders that only their owner may read.</summary>
internal static class PrivateFile
{
    public const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    public const UnixFileMode OwnerFolder = OwnerOnly | UnixFileMode.UserExecute;
    public const UnixFileMode WalkableFolder =
        OwnerFolder | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute;

    public static void SetMode(string path, UnixFileMode mode)
    {
        if (!OperatingSystem.IsLinux())
        {
            throw new PlatformNotSupportedException("The private server runs on Linux.");
        }

        File.SetUnixFileMode(path, mode);
    }

    /// <summary>Writes through a second file, so that a kill never leaves half of a password behind.</summary>
    public static void Write(string path, string text)
    {
        var unfinished = path + ".new";
        File.Delete(unfinished);
        using (var file = new FileStream(unfinished, FileMode.CreateNew, FileAccess.Write))
        {
            SetMode(unfinished, OwnerOnly);
            file.Write(System.Text.Encoding.ASCII.GetBytes(text));
            file.Flush(flushToDisk: true);
        }

        File.Move(unfinished, path, overwrite: true);
    }
}
