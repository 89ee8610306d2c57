using WeldTrace.TestSupport.Database;
using Xunit;

namespace WeldTrace.Persistence.Tests.PrivateServer;

public sealed class AppendOnlyTests(PostgresServerFixture server)
{
    public static TheoryData<string> Tables => [.. WeldTraceDbContext.AppendOnlyTables];

    [Theory]
    [MemberData(nameof(Tables))]
    public async Task Application_ChangingATableThatOnlyGrows_IsRefusedByTheDatabase(string table)
    {
        await using var database = await server.CreateWeldTraceDatabaseAsync();
        var application = database.Connections.Application;
        var column = await Query.RunAsync(
            database.Connections.Owner,
            $"SELECT quote_ident(column_name) FROM information_schema.columns WHERE table_name = '{table}' AND is_generated = 'NEVER' LIMIT 1"
        );

        Assert.Equal(
            "42501",
            await Query.RefusalAsync(application, $"UPDATE {table} SET {column} = NULL")
        );
        Assert.Equal("42501", await Query.RefusalAsync(application, $"DELETE FROM {table}"));
        Assert.Equal("42501", await Query.RefusalAsync(application, $"TRUNCATE {table} CASCADE"));
        Assert.Null(await Query.RefusalAsync(application, $"SELECT 1 FROM {table}"));
    }
}
