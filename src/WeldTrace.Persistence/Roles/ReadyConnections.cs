namespace WeldTrace.Persistence.Roles;

internal sealed class ReadyConnections : IDatabaseConnections
{
    private volatile DatabaseConnections? _current;

    public DatabaseConnections Current =>
        _current
        ?? throw new InvalidOperationException(
            "The database is not ready yet: resolve contexts after the hosted services have started."
        );

    public void Set(DatabaseConnections connections) => _current = connections;
}
