using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using WeldTrace.Persistence.Roles;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Ledger;

/// <summary>The owner of the database with every protection switched off, who changes rows and puts them back.</summary>
internal sealed class Forger(DemoSite site) : IAsyncDisposable
{
    private readonly NpgsqlConnection _owner = new(
        site.Services.GetRequiredService<IDatabaseConnections>().Current.Owner
    );

    private readonly List<string> _kept = [];

    public static async Task<Forger> OpenAsync(DemoSite site)
    {
        var forger = new Forger(site);
        await forger.OpenAsync();
        return forger;
    }

    private async Task OpenAsync()
    {
        await _owner.OpenAsync();
        // No trigger and no foreign key stands in the way of a replica.
        await RunAsync("SET session_replication_role = replica");
    }

    /// <summary>Tables of records, with the columns of each but its key.</summary>
    public async Task<IReadOnlyList<ForgedTable>> TablesAsync()
    {
        var names = await site.ReadAsync(db =>
            Task.FromResult(
                db.Model.GetEntityTypes()
                    .Where(t => typeof(WeldTrace.Domain.Records.Record).IsAssignableFrom(t.ClrType))
                    .Select(t => t.GetTableName()!)
                    .Distinct()
                    .ToList()
            )
        );
        List<ForgedTable> tables = [];
        foreach (var name in names)
        {
            tables.Add(
                new ForgedTable(name, [.. (await ColumnsAsync(name)).Where(c => c.Name != "id")])
            );
        }

        return tables;
    }

    /// <summary>Keeps a table aside, so that <see cref="RestoreAsync"/> brings it back.</summary>
    public async Task KeepAsync(string table)
    {
        await RunAsync($"CREATE TEMPORARY TABLE kept_{table} AS SELECT * FROM {table}");
        _kept.Add(table);
    }

    /// <summary>Puts everything back as it was.</summary>
    public async Task RestoreAsync()
    {
        foreach (var table in _kept)
        {
            // What the database works out itself can't be put back, and need not be.
            var columns = string.Join(", ", (await ColumnsAsync(table)).Select(c => c.Name));
            await RunAsync(
                $"DELETE FROM {table}; INSERT INTO {table} ({columns}) SELECT {columns} FROM kept_{table}; DROP TABLE kept_{table}"
            );
        }

        _kept.Clear();
    }

    public async Task<int> RunAsync(string statement)
    {
        await using var command = new NpgsqlCommand(statement, _owner);
        return await command.ExecuteNonQueryAsync();
    }

    /// <summary>Identities that a query gives.</summary>
    public async Task<IReadOnlyList<Guid>> IdsAsync(string query)
    {
        List<Guid> ids = [];
        await using var command = new NpgsqlCommand(query, _owner);
        await using var reader = await command.ExecuteReaderAsync();
        while (await reader.ReadAsync())
        {
            ids.Add(reader.GetGuid(0));
        }

        return ids;
    }

    public async ValueTask DisposeAsync()
    {
        await RestoreAsync();
        await _owner.DisposeAsync();
    }

    private async Task<IReadOnlyList<(string Name, string Type)>> ColumnsAsync(string table)
    {
        List<(string, string)> columns = [];
        await using var command = new NpgsqlCommand(
            """
            SELECT quote_ident(column_name), data_type FROM information_schema.columns
            WHERE table_schema = 'public' AND table_name = $1 AND is_generated = 'NEVER'
            ORDER BY ordinal_position
            """,
            _owner
        );
        command.Parameters.AddWithValue(table);
        await using var reader = await command.ExecuteReaderAsync();
        while (await reader.ReadAsync())
        {
            columns.Add((reader.GetString(0), reader.GetString(1)));
        }

        return columns;
    }
}

/// <summary>A table and its columns but the key.</summary>
internal sealed record ForgedTable(string Name, IReadOnlyList<(string Name, string Type)> Columns);
