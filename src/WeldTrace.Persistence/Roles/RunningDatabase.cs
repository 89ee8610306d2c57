using WeldTrace.Persistence.PrivateServer;

namespace WeldTrace.Persistence.Roles;

/// <summary>The private database of a WeldTrace that runs, for a command beside it.</summary>
public static class RunningDatabase
{
    /// <summary>Connection string of the application's role; null when no server listens in the data folder.</summary>
    public static string? Find(DatabaseSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var cluster = Path.Combine(settings.Folder, "cluster");
        if (
            settings.Owner is not null
            || !File.Exists(Path.Combine(cluster, ServerAddress.SocketName))
        )
        {
            return null;
        }

        var connection = ServerAddress
            .Choose(cluster, usesLoopback: false)
            .ConnectionTo(PrivateDatabase.Name);
        connection.Username = PrivateDatabase.ApplicationRoleName;
        connection.Password = Passwords.Read(Path.Combine(settings.Folder, "app-password"));
        return connection.ConnectionString;
    }
}
