using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Database;
using Xunit;

namespace WeldTrace.Persistence.Tests.PrivateServer;

public sealed class RoleTests(PostgresServerFixture server) : IAsyncLifetime
{
    private const string InsufficientPrivilege = "42501";
    private static readonly string[] _appendOnly = [ProbeContext.AppendOnlyTable];
    private TestDatabase? _database;

    private DatabaseConnections Connections => _database!.Connections;

    public async ValueTask InitializeAsync() =>
        _database = await server.CreateDatabaseAsync(ProbeContext.Open, _appendOnly);

    public async ValueTask DisposeAsync() => await _database!.DisposeAsync();

    [Theory]
    [InlineData("UPDATE ledger_probe SET note = 'changed'")]
    [InlineData("DELETE FROM ledger_probe")]
    [InlineData("TRUNCATE ledger_probe")]
    [InlineData("ALTER TABLE ledger_probe ADD COLUMN more text")]
    [InlineData("DROP TABLE ledger_probe")]
    [InlineData("ALTER TABLE ledger_probe DISABLE TRIGGER ALL")]
    [InlineData("CREATE TABLE own (id int)")]
    [InlineData("INSERT INTO \"__EFMigrationsHistory\" VALUES ('99999999999999_Forged', '0')")]
    public async Task Application_ActBeyondItsRights_IsRefusedByTheDatabase(string statement)
    {
        await Query.RunAsync(Connections.Owner, "INSERT INTO ledger_probe (note) VALUES ('first')");

        Assert.Equal(
            InsufficientPrivilege,
            await Query.RefusalAsync(Connections.Application, statement)
        );
        Assert.Equal(
            "first",
            await Query.RunAsync(Connections.Owner, "SELECT note FROM ledger_probe")
        );
    }

    [Theory]
    [InlineData("INSERT INTO ledger_probe (note) VALUES ('new')")]
    [InlineData("SELECT count(*) FROM ledger_probe")]
    [InlineData("INSERT INTO note_probe (note) VALUES ('new')")]
    [InlineData("UPDATE note_probe SET note = 'changed'")]
    [InlineData("DELETE FROM note_probe")]
    public async Task Application_OrdinaryAct_IsAllowed(string statement) =>
        Assert.Null(await Query.RefusalAsync(Connections.Application, statement));

    [Fact]
    public async Task RunAsync_RightsWereWidenedByHand_NarrowsThemAgain()
    {
        var role = Connections.ApplicationRole;
        await Query.RunAsync(Connections.Owner, $"GRANT ALL ON ledger_probe TO {role}, PUBLIC");
        Assert.Null(await Query.RefusalAsync(Connections.Application, "DELETE FROM ledger_probe"));

        await MigrateAsync(_appendOnly);

        Assert.Equal(
            InsufficientPrivilege,
            await Query.RefusalAsync(Connections.Application, "DELETE FROM ledger_probe")
        );
    }

    [Fact]
    public async Task RunAsync_MigrationsThisProgramDoesNotKnow_IsRefusedUnchanged()
    {
        await Query.RunAsync(
            Connections.Owner,
            "INSERT INTO \"__EFMigrationsHistory\" VALUES ('20990101000000_Later', '10.0.0')"
        );

        var refusal = await Assert.ThrowsAsync<DatabaseStartException>(() =>
            MigrateAsync(_appendOnly)
        );

        Assert.Equal(DatabaseStartProblem.NewerVersion, refusal.Problem);
        Assert.Contains("newer version", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("20990101000000_Later", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task RunAsync_AppendOnlyTableThatDoesNotExist_Throws() =>
        await Assert.ThrowsAsync<ArgumentException>(() => MigrateAsync(["ledger_renamed"]));

    [Fact]
    public async Task RunAsync_ManyAtOnceOnAnEmptyDatabase_MigratesOnce()
    {
        await using var empty = await server.CreateEmptyDatabaseAsync();

        await Task.WhenAll(
            Enumerable
                .Range(0, 4)
                .Select(async _ =>
                {
                    await using var context = ProbeContext.Open(empty.Connections.Owner);
                    await SchemaMigration.RunAsync(
                        context,
                        empty.Connections,
                        _appendOnly,
                        TestContext.Current.CancellationToken
                    );
                })
        );

        Assert.Equal(
            1L,
            await Query.RunAsync(
                empty.Connections.Owner,
                "SELECT count(*) FROM \"__EFMigrationsHistory\""
            )
        );
    }

    private async Task MigrateAsync(string[] appendOnly)
    {
        await using var context = ProbeContext.Open(Connections.Owner);
        await SchemaMigration.RunAsync(
            context,
            Connections,
            appendOnly,
            TestContext.Current.CancellationToken
        );
    }
}
