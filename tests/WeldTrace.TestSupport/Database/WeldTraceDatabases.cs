using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;

namespace WeldTrace.TestSupport.Database;

public static class WeldTraceDatabases
{
    /// <summary>A database with the application's own tables, and its own rights.</summary>
    public static Task<TestDatabase> CreateWeldTraceDatabaseAsync(this PostgresServerFixture server)
    {
        ArgumentNullException.ThrowIfNull(server);
        return server.CreateDatabaseAsync(Open, WeldTraceDbContext.AppendOnlyTables);
    }

    public static WeldTraceDbContext Open(string connectionString) =>
        new(
            new DbContextOptionsBuilder<WeldTraceDbContext>().UseWeldTrace(connectionString).Options
        );
}
