namespace WeldTrace.Persistence.Roles;

/// <summary>Gives the connection strings once the database server is ready.</summary>
public interface IDatabaseConnections
{
    /// <exception cref="InvalidOperationException">Asked before the hosted services have started.</exception>
    DatabaseConnections Current { get; }
}
