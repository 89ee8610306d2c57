using Npgsql;

namespace WeldTrace.Persistence.Roles;

/// <summary>The two ways into the database: the owner changes its structure, the application only its rows.</summary>
public sealed record DatabaseConnections(string Owner, string Application)
{
    public string ApplicationRole => new NpgsqlConnectionStringBuilder(Application).Username ?? "";

    /// <summary>Names server and database only: connection strings hold passwords.</summary>
    public override string ToString()
    {
        var owner = new NpgsqlConnectionStringBuilder(Owner);
        return $"database {owner.Database} on {owner.Host}";
    }
}
