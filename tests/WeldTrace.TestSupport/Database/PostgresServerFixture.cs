using System.Collections.Concurrent;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using WeldTrace.Persistence.Roles;
using Xunit;

namespace WeldTrace.TestSupport.Database;

/// <summary>
/// One PostgreSQL server for a test assembly: mark the assembly with <c>[assembly: AssemblyFixture(typeof(PostgresServerFixture))]</c>.
/// A context is migrated once, into a template; each test class takes a clone of it.
/// </summary>
public sealed class PostgresServerFixture : IAsyncLifetime
{
    private const int SessionsPerDatabase = 20;
    private readonly ConcurrentDictionary<Type, Lazy<Task<TestDatabase>>> _templates = new();
    private TestServer? _server;

    public async ValueTask InitializeAsync() => _server = await TestServers.StartAsync();

    /// <summary>Clones the migrated template of the context.</summary>
    /// <param name="open">Makes a context for a connection string.</param>
    /// <param name="appendOnlyTables">Tables that the application's role may not change.</param>
    public async Task<TestDatabase> CreateDatabaseAsync<TContext>(
        Func<string, TContext> open,
        IReadOnlyCollection<string> appendOnlyTables
    )
        where TContext : DbContext
    {
        var template = _templates.GetOrAdd(
            typeof(TContext),
            _ => new Lazy<Task<TestDatabase>>(() => MigrateTemplateAsync(open, appendOnlyTables))
        );
        return await CreateAsync((await template.Value).Name);
    }

    /// <summary>A database without a single table, with both roles.</summary>
    public Task<TestDatabase> CreateEmptyDatabaseAsync() => CreateAsync("template1");

    public async ValueTask DisposeAsync()
    {
        foreach (var template in _templates.Values)
        {
            await (await template.Value).DisposeAsync();
        }

        await (_server?.Lifetime?.DisposeAsync() ?? ValueTask.CompletedTask);
    }

    private async Task<TestDatabase> MigrateTemplateAsync<TContext>(
        Func<string, TContext> open,
        IReadOnlyCollection<string> appendOnlyTables
    )
        where TContext : DbContext
    {
        var template = await CreateAsync("template1");
        var connections = WithoutPool(template.Connections);
        await using var context = open(connections.Owner);
        await SchemaMigration.RunAsync(
            context,
            connections,
            appendOnlyTables,
            CancellationToken.None
        );
        return template;
    }

    private async Task<TestDatabase> CreateAsync(string template)
    {
        var name = $"weldtrace_test_{Guid.CreateVersion7(TimeProvider.System.GetUtcNow()):N}";
        await ExecuteAsync($"CREATE DATABASE {name} TEMPLATE {template}");
        var connections = new DatabaseConnections(OwnerOf(name), ApplicationOf(name));
        await ApplicationRole.EnsureAsync(WithoutPool(connections), CancellationToken.None);
        return new TestDatabase(name, connections, DropAsync);
    }

    private Task DropAsync(string name) => ExecuteAsync($"DROP DATABASE {name} WITH (FORCE)");

    private NpgsqlConnectionStringBuilder Server() =>
        new(
            (
                _server ?? throw new InvalidOperationException("The fixture has not started.")
            ).ConnectionString
        );

    private string OwnerOf(string database)
    {
        var owner = Server();
        owner.Database = database;
        owner.MaxPoolSize = SessionsPerDatabase;
        return owner.ConnectionString;
    }

    private string ApplicationOf(string database)
    {
        var application = new NpgsqlConnectionStringBuilder(
            DatabaseSettings.DeriveApplication(OwnerOf("weldtrace_test"))
        )
        {
            Database = database,
        };
        return application.ConnectionString;
    }

    // A session kept in a pool would stand in the way of cloning and dropping.
    private static DatabaseConnections WithoutPool(DatabaseConnections connections) =>
        new(WithoutPool(connections.Owner), WithoutPool(connections.Application));

    private static string WithoutPool(string connection) =>
        new NpgsqlConnectionStringBuilder(connection) { Pooling = false }.ConnectionString;

    private async Task ExecuteAsync(string statement)
    {
        await using var connection = new NpgsqlConnection(WithoutPool(Server().ConnectionString));
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(statement, connection);
        await command.ExecuteNonQueryAsync();
    }
}
