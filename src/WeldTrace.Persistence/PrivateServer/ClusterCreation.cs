namespace WeldTrace.Persistence.PrivateServer;

/// <summary>Makes the cluster beside its final place and renames it, so that a kill leaves nothing half made.</summary>
internal static class ClusterCreation
{
    private const long NeededBytes = 150L * 1024 * 1024;

    public static async Task RunAsync(
        DataFolder folder,
        ServerPrograms programs,
        ServerAccount account,
        string superuser,
        CancellationToken cancellation
    )
    {
        if (new DriveInfo(folder.Path).AvailableFreeSpace < NeededBytes)
        {
            throw DatabaseStartException.NoSpaceLeft(folder.Path);
        }

        var password = Passwords.ReadOrCreate(folder.OwnerPasswordFile);
        await PrepareAsync(folder.UnfinishedCluster, account, cancellation);
        var handedOver = folder.OwnerPasswordFile + ".initdb";
        try
        {
            // initdb reads the password under the server's account, which cannot open the application's own file.
            PrivateFile.Write(handedOver, password);
            await account.TakeOverAsync(handedOver, cancellation);
            var result = await Command.RunAsync(
                [
                    .. account.Prefix,
                    .. Words(programs, folder.UnfinishedCluster, superuser, handedOver),
                ],
                cancellation
            );
            Check(result, folder.Path);
        }
        finally
        {
            File.Delete(handedOver);
        }

        Directory.Move(folder.UnfinishedCluster, folder.Cluster);
    }

    private static async Task PrepareAsync(
        string cluster,
        ServerAccount account,
        CancellationToken cancellation
    )
    {
        if (Directory.Exists(cluster))
        {
            Directory.Delete(cluster, recursive: true);
        }

        Directory.CreateDirectory(cluster);
        PrivateFile.SetMode(cluster, PrivateFile.OwnerFolder);
        await account.TakeOverAsync(cluster, cancellation);
    }

    private static string[] Words(
        ServerPrograms programs,
        string cluster,
        string superuser,
        string passwordFile
    ) =>
        [
            programs.InitDb,
            "-D",
            cluster,
            "-U",
            superuser,
            "-A",
            "scram-sha-256",
            "-E",
            "UTF8",
            "--locale=C.UTF-8",
            "--data-checksums",
            $"--pwfile={passwordFile}",
        ];

    private static void Check(CommandResult result, string folder)
    {
        if (result.IsSuccess)
        {
            return;
        }

        var said = (result.Errors + result.Output).Trim();
        throw said.Contains("No space left on device", StringComparison.Ordinal)
            ? DatabaseStartException.NoSpaceLeft(folder)
            : new DatabaseStartException(
                DatabaseStartProblem.ServerDidNotStart,
                $"A new database could not be made: {said}",
                folder,
                "Mend what initdb complains about and start again; nothing was left half made."
            );
    }
}
