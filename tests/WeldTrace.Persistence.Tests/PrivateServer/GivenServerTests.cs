using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Database;
using Xunit;

namespace WeldTrace.Persistence.Tests.PrivateServer;

/// <summary>A server that someone else runs, whose user owns the database but is no superuser.</summary>
public sealed class GivenServerTests(PostgresServerFixture server) : IAsyncLifetime
{
    private const string Password = "a-password-of-the-test-only";
    private TestDatabase? _database;
    private string _owner = "";

    private string OwnerName => $"{_database!.Name}_o";

    private string ApplicationName => $"{_database!.Name}_app";

    public async ValueTask InitializeAsync()
    {
        _database = await server.CreateEmptyDatabaseAsync();
        await AsAdministratorAsync(
            $"""
            CREATE ROLE {OwnerName} LOGIN PASSWORD '{Password}';
            ALTER DATABASE {_database.Name} OWNER TO {OwnerName};
            """
        );
        _owner = With(OwnerName, Password);
    }

    public async ValueTask DisposeAsync()
    {
        await AsAdministratorAsync(
            $"""
            ALTER DATABASE {_database!.Name} OWNER TO CURRENT_USER;
            REASSIGN OWNED BY {OwnerName} TO CURRENT_USER;
            DROP OWNED BY {OwnerName};
            DROP ROLE {OwnerName};
            """
        );
        var made = "SELECT 1 FROM pg_roles WHERE rolname = '" + ApplicationName + "'";
        if (await Query.RunAsync(_database.Connections.Owner, made) is not null)
        {
            await AsAdministratorAsync(
                $"DROP OWNED BY {ApplicationName}; DROP ROLE {ApplicationName};"
            );
        }

        await _database.DisposeAsync();
    }

    [Fact]
    public async Task EnsureAsync_OwnerMayMakeRoles_MakesTheApplicationsRole()
    {
        await AsAdministratorAsync($"ALTER ROLE {OwnerName} CREATEROLE");

        var first = await EnsureAsync(_owner);
        var second = await EnsureAsync(_owner);
        await MigrateAsync(second);

        Assert.Equal(ApplicationName, second.ApplicationRole);
        Assert.Equal(first, second);
        Assert.Equal(
            "42501",
            await Query.RefusalAsync(second.Application, "DELETE FROM ledger_probe")
        );
    }

    [Fact]
    public async Task EnsureAsync_OwnerMayNotMakeRoles_SaysWhatAnAdministratorMustDo()
    {
        var refusal = await Assert.ThrowsAsync<DatabaseStartException>(() => EnsureAsync(_owner));

        Assert.Equal(DatabaseStartProblem.ApplicationRoleMissing, refusal.Problem);
        Assert.Contains(
            $"CREATE ROLE {ApplicationName} LOGIN",
            refusal.Message,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(Password, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task EnsureAsync_SecondUserGiven_GetsItsRights()
    {
        await AsAdministratorAsync($"CREATE ROLE {ApplicationName} LOGIN PASSWORD '{Password}'");

        var connections = await EnsureAsync(_owner, With(ApplicationName, Password));
        await MigrateAsync(connections);

        Assert.Null(await Query.RefusalAsync(connections.Application, "DELETE FROM note_probe"));
        Assert.Equal(
            "42501",
            await Query.RefusalAsync(connections.Application, "DELETE FROM ledger_probe")
        );
    }

    [Fact]
    public async Task EnsureAsync_SecondUserIsTheOwner_IsRefused()
    {
        var refusal = await Assert.ThrowsAsync<DatabaseStartException>(() =>
            EnsureAsync(_owner, _owner)
        );

        Assert.Equal(DatabaseStartProblem.ApplicationRoleMissing, refusal.Problem);
    }

    [Fact]
    public async Task EnsureAsync_WrongPassword_SaysSoAtOnce()
    {
        var refusal = await Assert.ThrowsAsync<DatabaseStartException>(() =>
            EnsureAsync(With(OwnerName, "wrong"))
        );

        Assert.Equal(DatabaseStartProblem.ServerNotReachable, refusal.Problem);
    }

    private static Task<DatabaseConnections> EnsureAsync(string owner, string? application = null)
    {
        Dictionary<string, string?> values = new()
        {
            ["ConnectionStrings:WeldTrace"] = owner,
            ["ConnectionStrings:WeldTraceApp"] = application,
        };
        var settings = new DatabaseSettings(
            new ConfigurationBuilder().AddInMemoryCollection(values).Build()
        );
        return GivenDatabase.EnsureAsync(
            settings,
            NullLogger.Instance,
            TestContext.Current.CancellationToken
        );
    }

    private static async Task MigrateAsync(DatabaseConnections connections)
    {
        await using var context = ProbeContext.Open(connections.Owner);
        await SchemaMigration.RunAsync(
            context,
            connections,
            [ProbeContext.AppendOnlyTable],
            TestContext.Current.CancellationToken
        );
    }

    private string With(string user, string password) =>
        new NpgsqlConnectionStringBuilder(_database!.Connections.Owner)
        {
            Username = user,
            Password = password,
            Pooling = false,
        }.ConnectionString;

    private Task<object?> AsAdministratorAsync(string statements) =>
        Query.RunAsync(_database!.Connections.Owner, statements);
}
