namespace WeldTrace.TestSupport.Database;

/// <summary>A running PostgreSQL server whose user may create databases and roles.</summary>
/// <param name="ConnectionString">To any database of the server.</param>
/// <param name="Lifetime">Stops the server, if the tests started it.</param>
public sealed record TestServer(string ConnectionString, IAsyncDisposable? Lifetime);
