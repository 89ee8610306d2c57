using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Persistence.RunFigures;
using WeldTrace.Persistence.Tests.PrivateServer;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Persistence.Tests.Upgrades;

/// <summary>A database of an earlier version, with what that version wrote, after this version has started on it.</summary>
public sealed class UpgradeTests(UpgradedWorkshop workshop, PostgresServerFixture server)
    : IClassFixture<UpgradedWorkshop>
{
    private const string RestrictViolation = "23001";
    private const string InsufficientPrivilege = "42501";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task EveryRow_StandsAsTheOldVersionWroteIt()
    {
        Assert.Equal(workshop.OldRows, await workshop.Facts.RowsAsync(workshop.OldColumns.Keys));
        // The sums are of something: each of these tables had rows.
        Assert.All(
            (string[])["vessels", "weld_runs", "findings", "concessions", "process_log_chunks"],
            table => Assert.DoesNotContain(" 0 rows", " " + workshop.OldRows[table])
        );
    }

    [Fact]
    public async Task Ledger_IsTheSameInEachByte_AndHolds()
    {
        Assert.Equal(OldWorkshop.LedgerEntries, workshop.OldLedger.Count);
        Assert.Equal(workshop.OldLedger, await workshop.LedgerAsync());

        await using var db = WeldTraceDatabases.Open(workshop.Application);
        // Reads each record through today's types and compares it with what its newest entry holds.
        var report = await db.CheckLedgerAsync(Cancellation);

        Assert.True(report.Problems.Count == 0, string.Join('\n', report.Problems));
        Assert.Equal(OldWorkshop.LedgerEntries, report.Entries);
        Assert.Equal(await NewestEntriesAsync(), report.Records);
    }

    [Fact]
    public async Task Structure_IsThatOfANewDatabase()
    {
        await using var made = await server.CreateWeldTraceDatabaseAsync();
        DatabaseFacts fresh = new(made.Connections.Owner);

        Assert.Equal(await fresh.ColumnsAsync(), await workshop.Facts.ColumnsAsync());
        Assert.Equal(await fresh.IndexesAsync(), await workshop.Facts.IndexesAsync());
        Assert.Equal(await fresh.ConstraintsAsync(), await workshop.Facts.ConstraintsAsync());
        Assert.Equal(await fresh.TriggersAsync(), await workshop.Facts.TriggersAsync());
        Assert.Equal(await fresh.HistoryAsync(), await workshop.Facts.HistoryAsync());
    }

    /// <summary>What the old version did not know was never recorded: a new column of an old table says nothing about an old row.</summary>
    [Fact]
    public async Task NewColumns_OfOldRecords_SayNothing()
    {
        var columns = await workshop.Facts.ColumnsAsync();
        var tables = workshop.OldColumns.Keys.Select(c => c.Split('.')[0]).ToHashSet();
        var added = columns
            .Keys.Except(workshop.OldColumns.Keys)
            .Where(c => tables.Contains(c.Split('.')[0]))
            // What the database works out of the other columns says nothing new.
            .Where(c => !columns[c].EndsWith(" generated", StringComparison.Ordinal))
            .ToList();

        Assert.Contains("weld_runs.repair", added);
        Assert.Contains("findings.earlier_decisions", added);
        foreach (var column in added)
        {
            var (table, name) = (column.Split('.')[0], column.Split('.')[1]);
            Assert.Equal(
                0L,
                await Query.RunAsync(
                    workshop.Owner,
                    $"SELECT count(*) FROM \"{table}\" WHERE \"{name}\" IS NOT NULL"
                )
            );
        }
    }

    /// <summary>Runs that were judged before their figures were kept apart are found by them too; computed here from the records.</summary>
    [Fact]
    public async Task RunFigures_OfOldRuns_AreThoseOfTheirLogs()
    {
        await using var db = WeldTraceDatabases.Open(workshop.Application);
        var runs = await db.WeldRuns.AsNoTracking().ToListAsync(Cancellation);
        var tools = await db.Tools.AsNoTracking().ToDictionaryAsync(t => t.Id, Cancellation);

        var kept = await db.RunFigures.AsNoTracking().ToListAsync(Cancellation);

        var expected = runs.SelectMany(r => Expected(r, tools[r.ToolId])).ToList();
        Assert.NotEmpty(expected);
        Assert.Equal(
            expected.OrderBy(f => f.RunId).ThenBy(f => f.Parameter).Select(Text),
            kept.OrderBy(f => f.RunId).ThenBy(f => f.Parameter).Select(Text)
        );
    }

    [Fact]
    public async Task ApplicationRole_HasItsRights_AndNoOthers()
    {
        var rights = await new DatabaseFacts(workshop.Application).RightsAsync();

        var tables = (await workshop.Facts.ColumnsAsync()).Keys.Select(c => c.Split('.')[0]);
        SortedDictionary<string, string> expected = new(StringComparer.Ordinal);
        foreach (var table in tables.Distinct())
        {
            expected[table] =
                table == DatabaseFacts.History ? "SELECT"
                : WeldTraceDbContext.AppendOnlyTables.Contains(table) ? "INSERT SELECT"
                : "DELETE INSERT SELECT UPDATE";
        }

        Assert.Equal(expected, rights);
        foreach (var act in (string[])["CREATE TABLE own (id int)", "DROP TABLE findings"])
        {
            Assert.Equal(
                InsufficientPrivilege,
                await Query.RefusalAsync(workshop.Application, act)
            );
        }
    }

    [Theory]
    [InlineData("ledger_entries", "entry = entry", "true")]
    [InlineData("ledger_nodes", "hash = hash", "true")]
    [InlineData("checkpoints", "statement = statement", "true")]
    [InlineData("signatures", "id = id", "true")]
    [InlineData("step_sign_offs", "examination = '{}'", "true")]
    [InlineData("weld_runs", "repair = '{}'", "signed_at IS NOT NULL")]
    [InlineData("weld_runs", "phase_corrections = '[]'", "signed_at IS NOT NULL")]
    [InlineData("leak_tests", "acknowledgement = '{}'", "signed_at IS NOT NULL")]
    [InlineData("pressure_tests", "departures = '[]'", "signed_at IS NOT NULL")]
    [InlineData("sections", "measurement = NULL", "signed_at IS NOT NULL")]
    public async Task SealedRow_OfTheOldVersion_IsChangedByNobody(
        string table,
        string set,
        string which
    )
    {
        Assert.True(
            await Query.RunAsync(workshop.Owner, $"SELECT count(*) FROM {table} WHERE {which}")
                is > 0L,
            $"{table} has no such row"
        );

        string[] acts =
        [
            $"UPDATE {table} SET {set} WHERE {which}",
            $"DELETE FROM {table} WHERE {which}",
        ];
        foreach (var act in acts)
        {
            Assert.Equal(RestrictViolation, await Query.RefusalAsync(workshop.Owner, act));
            Assert.Contains(
                await Query.RefusalAsync(workshop.Application, act),
                (string[])[RestrictViolation, InsufficientPrivilege]
            );
        }
    }

    [Theory]
    [InlineData("laboratory_tests")]
    [InlineData("production_tests")]
    public async Task SealedTable_ThatTheUpgradeMade_TakesRowsAndKeepsThem(string table)
    {
        var values = (await workshop.Facts.ColumnsAsync())
            .Where(c => c.Key.StartsWith(table + ".", StringComparison.Ordinal))
            .Where(c => c.Value.Contains(" NO", StringComparison.Ordinal))
            .ToDictionary(c => c.Key.Split('.')[1], c => Any(c.Value));
        var insert =
            $"INSERT INTO {table} ({string.Join(", ", values.Keys)}) VALUES ({string.Join(", ", values.Values)});";

        // Each is one transaction, which the refusal takes back.
        Assert.Equal(
            RestrictViolation,
            await Query.RefusalAsync(workshop.Owner, $"{insert} UPDATE {table} SET id = id")
        );
        Assert.Equal(
            RestrictViolation,
            await Query.RefusalAsync(workshop.Owner, $"{insert} DELETE FROM {table}")
        );
        Assert.Equal(
            InsufficientPrivilege,
            await Query.RefusalAsync(workshop.Application, $"{insert} DELETE FROM {table}")
        );
    }

    /// <summary>On a database of its own, since it adds to the ledger.</summary>
    [Fact]
    public async Task Work_GoesOnAfterwards_InTheSameLedger()
    {
        await using var database = await OldWorkshop.CreateAsync(server);
        await OldWorkshop.StartTodaysProgramAsync(database);

        await using (var db = WeldTraceDatabases.Open(database.Connections.Application))
        {
            db.Add(SampleMaterial.Bare("ML-after"));
            Accept.All(await db.SaveAsync(Cancellation));
        }

        // A second start finds nothing to do.
        await OldWorkshop.StartTodaysProgramAsync(database);
        await using var read = WeldTraceDatabases.Open(database.Connections.Application);
        var report = await read.CheckLedgerAsync(Cancellation);
        Assert.True(report.Problems.Count == 0, string.Join('\n', report.Problems));
        Assert.Equal(OldWorkshop.LedgerEntries + 1, report.Entries);
    }

    private async Task<long> NewestEntriesAsync() =>
        (long)
            (
                await Query.RunAsync(
                    workshop.Owner,
                    "SELECT count(DISTINCT record_id) FROM ledger_entries"
                )
            )!;

    private static IEnumerable<RunFigureRow> Expected(WeldRun run, Tool tool) =>
        (run.Log?.Parameters ?? []).Select(p => new RunFigureRow
        {
            RunId = run.Id,
            Parameter = p.Parameter,
            StartedAt = run.StartedAt,
            ProcedureRevisionId = run.ProcedureRevisionId,
            MachineId = run.MachineId,
            ToolId = run.ToolId,
            OperatorId = run.OperatorId,
            MeanSi = p.MeanSi,
            StandardDeviationSi = p.StandardDeviationSi,
            ToolMetres = tool
                .Uses.TakeWhile(u => u.RunId != run.Id)
                .Append(tool.Uses.Last(u => u.RunId == run.Id))
                .Sum(u => u.Length.Metres),
        });

    // To the micrometre: a sum in another order ends in other last digits.
    private static string Text(RunFigureRow row) =>
        FormattableString.Invariant(
            $"{row.RunId} {row.Parameter} {row.StartedAt:O} {row.ProcedureRevisionId} {row.MachineId} {row.ToolId} {row.OperatorId} {row.MeanSi:R} {row.StandardDeviationSi:R} {row.ToolMetres:F6}"
        );

    private static string Any(string type) =>
        type.Split(' ')[0] switch
        {
            "uuid" => "gen_random_uuid()",
            "jsonb" => "'{}'",
            "timestamp" => "now()",
            "integer" or "bigint" or "double" => "0",
            "boolean" => "false",
            _ => "''",
        };
}
