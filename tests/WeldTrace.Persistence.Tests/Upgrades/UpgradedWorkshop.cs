using WeldTrace.TestSupport.Database;
using Xunit;

namespace WeldTrace.Persistence.Tests.Upgrades;

/// <summary>The old workshop after today's program has started on its database, with what stood there before.</summary>
public sealed class UpgradedWorkshop(PostgresServerFixture server) : IAsyncLifetime
{
    private TestDatabase? _database;

    public string Owner => _database!.Connections.Owner;

    public string Application => _database!.Connections.Application;

    public string ApplicationRole => _database!.Connections.ApplicationRole;

    internal DatabaseFacts Facts => new(Owner);

    /// <summary>Columns of the old structure, each with its type.</summary>
    public IReadOnlyDictionary<string, string> OldColumns { get; private set; } = null!;

    /// <summary>Number and sum of the rows of each old table.</summary>
    public IReadOnlyDictionary<string, string> OldRows { get; private set; } = null!;

    /// <summary>Each ledger entry, in bytes, with its hash.</summary>
    public IReadOnlyDictionary<string, string> OldLedger { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        _database = await OldWorkshop.CreateAsync(server);
        OldColumns = await Facts.ColumnsAsync();
        OldRows = await Facts.RowsAsync(OldColumns.Keys);
        OldLedger = await LedgerAsync();
        await OldWorkshop.StartTodaysProgramAsync(_database);
    }

    /// <summary>Each ledger entry as it stands now, in bytes, with its hash.</summary>
    public Task<SortedDictionary<string, string>> LedgerAsync() =>
        Facts.ReadAsync(
            "SELECT lpad(number::text, 9, '0'), encode(convert_to(entry, 'UTF8'), 'hex') || ' ' || encode(leaf_hash, 'hex') FROM ledger_entries"
        );

    public async ValueTask DisposeAsync() => await _database!.DisposeAsync();
}
