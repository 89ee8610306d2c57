using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Ledger;

/// <summary>Whoever owns the database can change it; the check of the ledger names every such change.</summary>
[Collection(typeof(SecondDemoSiteGroup))]
public sealed class LedgerCheckTests(DemoSite site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Untouched_NothingIsFound() => Assert.Empty(await ProblemsAsync());

    /// <summary>One column of one row of each table at a time, until every column had its turn.</summary>
    [Fact]
    public async Task ColumnChanged_IsFoundInEveryTable()
    {
        await using var forger = await Forger.OpenAsync(site);
        var tables = await forger.TablesAsync();
        List<string> missed = [];
        for (var turn = 0; turn < tables.Max(t => t.Columns.Count); turn++)
        {
            missed.AddRange(await ForgeColumnAsync(forger, tables, turn));
        }

        Assert.True(missed.Count == 0, "Changed and not found:\n" + string.Join('\n', missed));
    }

    [Fact]
    public async Task RowRemoved_IsFoundInEveryTable() =>
        await EachTableAsync(
            table => $"DELETE FROM {table} WHERE id = (SELECT min(id::text)::uuid FROM {table})",
            "is missing from the records"
        );

    [Fact]
    public async Task RowAdded_IsFoundInEveryTable() =>
        await EachTableAsync(
            // Another identity makes another record: one is missing, one too many.
            table =>
                $"UPDATE {table} SET id = gen_random_uuid() WHERE id = (SELECT min(id::text)::uuid FROM {table})",
            "stands in the records but not in the ledger"
        );

    [Theory]
    [InlineData(
        "UPDATE ledger_entries SET entry = replace(entry, '\"version\":1', '\"version\":2') WHERE number = 7",
        "entry 7 was changed"
    )]
    [InlineData("DELETE FROM ledger_entries WHERE number = 7", "entry 7 is missing")]
    [InlineData(
        "DELETE FROM ledger_entries WHERE number = (SELECT max(number) FROM ledger_entries)",
        "is missing"
    )]
    [InlineData(
        "UPDATE ledger_entries SET number = -1 WHERE number = 7; UPDATE ledger_entries SET number = 7 WHERE number = 8; UPDATE ledger_entries SET number = 8 WHERE number = -1",
        "root of the ledger"
    )]
    [InlineData(
        "UPDATE ledger_entries SET leaf_hash = sha256('other'::bytea) WHERE number = 7",
        "entry 7 was changed"
    )]
    [InlineData(
        "UPDATE ledger_entries SET at = at - interval '1 day' WHERE number = 7",
        "entry 7 is filed under another"
    )]
    [InlineData(
        "UPDATE ledger_entries SET record_kind = 'tool' WHERE number = 1",
        "entry 1 is filed under another"
    )]
    [InlineData(
        "UPDATE ledger_entries SET vessels = '{}' WHERE number = (SELECT max(number) FROM ledger_entries WHERE vessels <> '{}')",
        "is filed under another"
    )]
    [InlineData(
        "UPDATE ledger_nodes SET hash = sha256('other'::bytea) WHERE level = 2 AND position = 3",
        "Node 3 of level 2"
    )]
    [InlineData("DELETE FROM ledger_nodes WHERE level = 0 AND position = 5", "Node 5 of level 0")]
    [InlineData(
        "INSERT INTO ledger_nodes (level, position, hash) VALUES (30, 0, sha256('other'::bytea))",
        "1 more nodes"
    )]
    public async Task EntryForged_IsFound(string statement, string said)
    {
        await using var forger = await Forger.OpenAsync(site);
        await forger.KeepAsync("ledger_entries");
        await forger.KeepAsync("ledger_nodes");
        Assert.NotEqual(0, await forger.RunAsync(statement));
        var problems = await ProblemsAsync();
        await forger.RestoreAsync();

        Assert.Contains(problems, p => p.Contains(said, StringComparison.Ordinal));
        Assert.Empty(await ProblemsAsync());
    }

    [Theory]
    [InlineData(
        "attachments",
        "UPDATE attachments SET bytes = bytes || '\\x00' WHERE sha256 = (SELECT min(sha256) FROM attachments)",
        "was changed: its bytes"
    )]
    [InlineData(
        "attachments",
        "DELETE FROM attachments WHERE sha256 = (SELECT min(sha256) FROM attachments)",
        "is missing"
    )]
    [InlineData(
        "process_log_chunks",
        "UPDATE process_log_chunks SET bytes = set_byte(bytes, 20, 255 - get_byte(bytes, 20)) WHERE ctid = (SELECT min(ctid) FROM process_log_chunks WHERE ordinal = 3)",
        "process log of"
    )]
    [InlineData(
        "process_log_chunks",
        "DELETE FROM process_log_chunks WHERE ctid = (SELECT min(ctid) FROM process_log_chunks)",
        "process log of"
    )]
    [InlineData(
        "process_logs",
        "DELETE FROM process_logs WHERE ctid = (SELECT min(ctid) FROM process_logs)",
        "is missing"
    )]
    [InlineData(
        "process_logs",
        "UPDATE process_logs SET run_id = gen_random_uuid() WHERE ctid = (SELECT min(ctid) FROM process_logs)",
        "that no record names"
    )]
    public async Task FileForged_IsFound(string table, string statement, string said)
    {
        await using var forger = await Forger.OpenAsync(site);
        await forger.KeepAsync(table);
        Assert.Equal(1, await forger.RunAsync(statement));
        Assert.Contains(await ProblemsAsync(), p => p.Contains(said, StringComparison.Ordinal));
    }

    private async Task<IReadOnlyList<string>> ForgeColumnAsync(
        Forger forger,
        IReadOnlyList<ForgedTable> tables,
        int turn
    )
    {
        List<string> missed = [];
        var forged = tables.Where(t => t.Columns.Count > turn).ToList();
        Dictionary<string, Guid> victims = [];
        foreach (var table in forged)
        {
            await forger.KeepAsync(table.Name);
            var (column, type) = table.Columns[turn];
            var ids = await forger.IdsAsync(
                $"""
                UPDATE {table.Name} SET {column} = {ForgedValue.Other(column, type)}
                WHERE id = (SELECT id FROM {table.Name} WHERE {column} IS NOT NULL AND {ForgedValue.Other(
                    column,
                    type
                )} IS DISTINCT FROM {column} ORDER BY id LIMIT 1)
                RETURNING id
                """
            );
            if (ids.Count == 1)
            {
                victims[$"{table.Name}.{column}"] = ids[0];
            }
        }

        var problems = await ProblemsAsync();
        await forger.RestoreAsync();

        foreach (var (column, id) in victims)
        {
            var newest = await site.ReadAsync(db =>
                db.LedgerEntries.Where(e => e.RecordId == id).MaxAsync(e => e.Number)
            );
            if (!problems.Any(p => Names(p, id, newest)))
            {
                missed.Add(column);
            }
        }

        return missed;
    }

    private static bool Names(string problem, Guid id, long newest) =>
        problem.Contains(id.ToString(), StringComparison.Ordinal)
        || problem.EndsWith(
            FormattableString.Invariant($" differs from ledger entry {newest}."),
            StringComparison.Ordinal
        );

    private async Task EachTableAsync(Func<string, string> statement, string said)
    {
        await using var forger = await Forger.OpenAsync(site);
        var tables = await forger.TablesAsync();
        var forged = 0;
        foreach (var table in tables)
        {
            await forger.KeepAsync(table.Name);
            forged += await forger.RunAsync(statement(table.Name));
        }

        var problems = await ProblemsAsync();
        await forger.RestoreAsync();

        Assert.Equal(tables.Count, forged);
        Assert.Equal(forged, problems.Count(p => p.Contains(said, StringComparison.Ordinal)));
    }

    private async Task<IReadOnlyList<string>> ProblemsAsync() =>
        (await site.ReadAsync(db => db.CheckLedgerAsync(Cancellation))).Problems;
}
