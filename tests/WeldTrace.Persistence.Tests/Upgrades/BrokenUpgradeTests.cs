using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.Tests.PrivateServer;
using WeldTrace.TestSupport.Database;
using Xunit;

namespace WeldTrace.Persistence.Tests.Upgrades;

/// <summary>An upgrade that can't be done to its end: nothing of it is done, and it says so.</summary>
public sealed class BrokenUpgradeTests(PostgresServerFixture server)
{
    /// <summary>A table that somebody made by hand stands in the way of one of the last of sixteen steps.</summary>
    [Fact]
    public async Task Start_WhenAStepFails_LeavesTheOldDatabaseAndSaysHowToMend()
    {
        await using var database = await OldWorkshop.CreateAsync(server);
        var owner = database.Connections.Owner;
        await Query.RunAsync(owner, "CREATE TABLE system_tokens (note text)");
        var before = await EverythingAsync(owner);

        var refusal = await Assert.ThrowsAsync<DatabaseStartException>(() =>
            OldWorkshop.StartTodaysProgramAsync(database)
        );

        Assert.Equal(DatabaseStartProblem.UpgradeFailed, refusal.Problem);
        Assert.Contains("20261126180459_TestBench to ", refusal.What, StringComparison.Ordinal);
        Assert.Contains("\"system_tokens\" already exists", refusal.What, StringComparison.Ordinal);
        Assert.Contains(database.Name, refusal.Where, StringComparison.Ordinal);
        Assert.Contains("Nothing was changed", refusal.Remedy, StringComparison.Ordinal);
        Assert.Equal(before, await EverythingAsync(owner));

        // Mended as the message says, it goes through.
        await Query.RunAsync(owner, "DROP TABLE system_tokens");
        await OldWorkshop.StartTodaysProgramAsync(database);
        Assert.Contains(
            "20261127142702_SystemTokens",
            (await new DatabaseFacts(owner).HistoryAsync()).Keys
        );
    }

    /// <summary>A program from before the newest step finds a database that it must not touch.</summary>
    [Fact]
    public async Task Start_OfAProgramOlderThanTheDatabase_IsRefusedUnchanged()
    {
        await using var database = await OldWorkshop.CreateAsync(server);
        var owner = database.Connections.Owner;
        await Query.RunAsync(
            owner,
            "INSERT INTO \"__EFMigrationsHistory\" VALUES ('20990101000000_Later', '99.0.0')"
        );
        var before = await EverythingAsync(owner);

        var refusal = await Assert.ThrowsAsync<DatabaseStartException>(() =>
            OldWorkshop.StartTodaysProgramAsync(database)
        );

        Assert.Equal(DatabaseStartProblem.NewerVersion, refusal.Problem);
        Assert.Contains("20990101000000_Later", refusal.What, StringComparison.Ordinal);
        Assert.Contains(database.Name, refusal.Where, StringComparison.Ordinal);
        Assert.Contains("Start the newer version again", refusal.Remedy, StringComparison.Ordinal);
        Assert.Equal(before, await EverythingAsync(owner));
    }

    private static async Task<IReadOnlyList<KeyValuePair<string, string>>> EverythingAsync(
        string owner
    )
    {
        DatabaseFacts facts = new(owner);
        var columns = await facts.ColumnsAsync();
        return
        [
            .. columns,
            .. await facts.RowsAsync(columns.Keys),
            .. await facts.HistoryAsync(),
            .. await facts.TriggersAsync(),
            .. await facts.IndexesAsync(),
            .. await facts.ConstraintsAsync(),
        ];
    }
}
