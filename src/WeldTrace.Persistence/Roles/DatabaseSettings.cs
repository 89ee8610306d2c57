using System.Security.Cryptography;
using System.Text;
using Microsoft.Extensions.Configuration;
using Npgsql;
using WeldTrace.Persistence.PrivateServer;

namespace WeldTrace.Persistence.Roles;

/// <summary>
/// Where the database is: <c>ConnectionStrings:WeldTrace</c> (its user owns the database) and, if that user may not
/// make roles, <c>ConnectionStrings:WeldTraceApp</c>; else a private server in <c>Database:Folder</c>, with programs
/// from <c>Database:BinFolder</c>.
/// </summary>
public sealed class DatabaseSettings(IConfiguration configuration)
{
    public string? Owner => Given(configuration.GetConnectionString("WeldTrace"));

    public string? Application => Given(configuration.GetConnectionString("WeldTraceApp"));

    /// <summary>The data folder of this installation, which also holds what is not in the database.</summary>
    public string Folder =>
        Path.GetFullPath(
            Given(configuration["Database:Folder"]) ?? PrivateServerSettings.DefaultFolder()
        );

    public PrivateServerSettings PrivateServer =>
        new(Folder) { BinFolder = Given(configuration["Database:BinFolder"]) };

    /// <summary>Both connections to a given server.</summary>
    /// <exception cref="DatabaseStartException">No second user is named and none can be derived.</exception>
    public DatabaseConnections OnGivenServer()
    {
        var owner = Owner ?? throw new InvalidOperationException("No server is given.");
        return new DatabaseConnections(owner, Application ?? DeriveApplication(owner));
    }

    /// <summary>
    /// The role is named after the database. Its password follows from the owner's, so that every node that knows the
    /// one knows the other, and no node has to store it.
    /// </summary>
    public static string DeriveApplication(string owner)
    {
        var derived = new NpgsqlConnectionStringBuilder(owner);
        if (string.IsNullOrEmpty(derived.Password) || string.IsNullOrEmpty(derived.Database))
        {
            throw new DatabaseStartException(
                DatabaseStartProblem.ApplicationRoleMissing,
                "ConnectionStrings:WeldTrace has no password or no database, so the application's own role cannot be made",
                derived.Host ?? "",
                "Name Database and Password there, or give a second user, who does not own the database, in ConnectionStrings:WeldTraceApp."
            );
        }

        derived.Username = $"{derived.Database}_app";
        var about = Encoding.UTF8.GetBytes($"weldtrace application role {derived.Username}");
        var key = Encoding.UTF8.GetBytes(derived.Password);
        derived.Password = Convert.ToHexStringLower(HMACSHA256.HashData(key, about));
        return derived.ConnectionString;
    }

    private static string? Given(string? value) => string.IsNullOrWhiteSpace(value) ? null : value;
}
