using WeldTrace.Persistence.Roles;

namespace WeldTrace.TestSupport.Database;

/// <summary>A database of its own for one test or test class; it is dropped at the end.</summary>
public sealed class TestDatabase(
    string name,
    DatabaseConnections connections,
    Func<string, Task> drop
) : IAsyncDisposable
{
    public string Name => name;

    public DatabaseConnections Connections => connections;

    public async ValueTask DisposeAsync() => await drop(name);
}
