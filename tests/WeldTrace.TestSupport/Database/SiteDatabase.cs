using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Archives;

namespace WeldTrace.TestSupport.Database;

/// <summary>A migrated database of the application, and contexts on it with the rights of the application's own role.</summary>
public sealed class SiteDatabase : IDbContextFactory<WeldTraceDbContext>, IAsyncDisposable
{
    private readonly TestDatabase _database;
    private readonly TestFolder _folder = new();

    private SiteDatabase(TestDatabase database) =>
        (_database, Archive) = (database, new ArchiveFolder(_folder.Path));

    /// <summary>Where archived bundles are.</summary>
    public ArchiveFolder Archive { get; }

    public string ConnectionString => _database.Connections.Application;

    /// <summary>Connection of the database's owner, who may write what the application may not.</summary>
    public string OwnerConnectionString => _database.Connections.Owner;

    public static async Task<SiteDatabase> CreateAsync(PostgresServerFixture server)
    {
        var site = new SiteDatabase(
            await server.CreateDatabaseAsync(
                connection => Open(connection, null),
                WeldTraceDbContext.AppendOnlyTables
            )
        );
        await site.AddAsync(Records.SamplePapers.Certificate());
        return site;
    }

    public WeldTraceDbContext CreateDbContext() => Open(ConnectionString, Archive);

    /// <summary>Saves records, with their ledger entries.</summary>
    public async Task AddAsync(params IReadOnlyList<object> entities)
    {
        await using var db = CreateDbContext();
        db.AddRange(entities);
        Records.Accept.All(await db.SaveAsync(CancellationToken.None));
    }

    /// <summary>Reads with a context of its own.</summary>
    public async Task<T> ReadAsync<T>(Func<WeldTraceDbContext, Task<T>> read)
    {
        await using var db = CreateDbContext();
        return await read(db);
    }

    public ValueTask DisposeAsync()
    {
        _folder.Dispose();
        return _database.DisposeAsync();
    }

    private static WeldTraceDbContext Open(string connection, ArchiveFolder? archive) =>
        new(
            new DbContextOptionsBuilder<WeldTraceDbContext>()
                .UseWeldTrace(connection, archive)
                .Options
        );
}
