namespace WeldTrace.Persistence.PrivateServer;

/// <summary>The account the server runs under: PostgreSQL refuses to run as root, so root steps down to another.</summary>
internal sealed record ServerAccount(string? UserId, string? GroupId)
{
    private static readonly string[] _accounts = ["postgres", "nobody"];

    private string Owner => $"{UserId}:{GroupId}";

    /// <summary>Words to put before a command; <c>setpriv</c> replaces itself, so the process id stays the server's.</summary>
    public IReadOnlyList<string> Prefix =>
        UserId is null
            ? []
            :
            [
                "setpriv",
                $"--reuid={UserId}",
                $"--regid={GroupId}",
                "--clear-groups",
                "--inh-caps=-all",
                "--no-new-privs",
                "--reset-env",
            ];

    public static async Task<ServerAccount> ChooseAsync(
        DataFolder folder,
        CancellationToken cancellation
    )
    {
        var owner = folder.HasCluster
            ? await IdsAsync(["stat", "-c", "%u %g", folder.Cluster], cancellation)
            : null;
        if (!Environment.IsPrivilegedProcess)
        {
            return await AsSelfAsync(folder, owner, cancellation);
        }

        return owner is { UserId: not "0" }
            ? owner
            : await UnprivilegedAsync(folder, owner, cancellation);
    }

    public async Task TakeOverAsync(string path, CancellationToken cancellation)
    {
        if (UserId is not null)
        {
            await Command.RunAsync(["chown", "-R", Owner, path], cancellation);
        }
    }

    /// <summary>Refuses a folder that the account cannot reach, and names the parent that stands in the way.</summary>
    public async Task RequireWayToAsync(string path, CancellationToken cancellation)
    {
        if (UserId is null || await CanEnterAsync(path, cancellation))
        {
            return;
        }

        var barrier = path;
        for (
            var parent = Path.GetDirectoryName(path);
            parent is not null;
            parent = Path.GetDirectoryName(parent)
        )
        {
            barrier = await CanEnterAsync(parent, cancellation) ? barrier : parent;
        }

        throw new DatabaseStartException(
            DatabaseStartProblem.FolderNotWalkable,
            $"The database server, which may not run as root, cannot enter {barrier}",
            path,
            $"Choose a data folder outside of it (for example /var/lib/weldtrace), allow passage with: chmod o+x {barrier}, or start WeldTrace as an ordinary user."
        );
    }

    private static async Task<ServerAccount> AsSelfAsync(
        DataFolder folder,
        ServerAccount? owner,
        CancellationToken cancellation
    )
    {
        var self = await Command.RunAsync(["id", "-u"], cancellation);
        return owner is null || owner.UserId == self.Output.Trim()
            ? new ServerAccount(null, null)
            : throw new DatabaseStartException(
                DatabaseStartProblem.FolderOfAnotherAccount,
                $"The data folder belongs to the account with number {owner.UserId}",
                folder.Path,
                "Start WeldTrace as the user that started it before (root, if that was root), or name another folder in Database:Folder."
            );
    }

    private static async Task<ServerAccount> UnprivilegedAsync(
        DataFolder folder,
        ServerAccount? owner,
        CancellationToken cancellation
    )
    {
        foreach (var name in _accounts)
        {
            var user = await Command.RunAsync(["id", "-u", name], cancellation);
            var group = await Command.RunAsync(["id", "-g", name], cancellation);
            if (user.IsSuccess && group.IsSuccess)
            {
                var account = new ServerAccount(user.Output.Trim(), group.Output.Trim());
                // A folder copied back by root belongs to root, which PostgreSQL would refuse.
                await (
                    owner is null
                        ? Task.CompletedTask
                        : account.TakeOverAsync(folder.Cluster, cancellation)
                );
                return account;
            }
        }

        throw new DatabaseStartException(
            DatabaseStartProblem.NoServerPrograms,
            "There is no account to run the database server under (neither postgres nor nobody)",
            folder.Path,
            "Install PostgreSQL with: apt-get install postgresql, or start WeldTrace as an ordinary user."
        );
    }

    private static async Task<ServerAccount?> IdsAsync(
        IReadOnlyList<string> words,
        CancellationToken cancellation
    )
    {
        var result = await Command.RunAsync(words, cancellation);
        return result.Output.Trim().Split(' ') is [var user, var group]
            ? new ServerAccount(user, group)
            : null;
    }

    private async Task<bool> CanEnterAsync(string path, CancellationToken cancellation)
    {
        var result = await Command.RunAsync(
            [.. Prefix, "/bin/sh", "-c", "cd -- \"$1\"", "sh", path],
            cancellation
        );
        return result.IsSuccess;
    }
}
