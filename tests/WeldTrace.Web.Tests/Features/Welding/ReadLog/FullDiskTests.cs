using Npgsql;
using WeldTrace.TestSupport.Database;

namespace WeldTrace.Web.Tests.Features.Welding.ReadLog;

/// <summary>The disk fills up while the samples of a log are written: the run has none of it, and the file waits to be read again.</summary>
public sealed class FullDiskTests(PostgresServerFixture server)
{
    private const int WrittenBefore = 3;

    [Theory]
    [InlineData("process_log_chunks", WrittenBefore)]
    [InlineData("process_log_levels", 0)]
    [InlineData("ledger_entries", 0)]
    public async Task DiskFull_WhileStoring_SaysSo_AndKeepsNothingByHalf(string table, int before)
    {
        await using var shop = await WeldShop.OpenAsync(server);
        await shop.RememberAsync();
        var run = await shop.EndedAsync();
        var upload = await shop.UploadAsync(run, SampleLogs.Good());
        await using var owner = NpgsqlDataSource.Create(shop.Database.OwnerConnectionString);
        await FillDiskAsync(owner, table, before);

        var refused = await shop.TakeAsync(run, upload);

        Assert.Equal("disk-full", Assert.Single(refused.Outcome.Refusals).Code);
        Assert.Null((await shop.RunAsync(run)).Log);
        Assert.Equal(0, await CountAsync(owner, "process_logs"));
        Assert.Equal(0, await CountAsync(owner, "process_log_chunks"));
        Assert.NotEmpty(shop.StagedFiles);

        await ExecuteAsync(owner, "DROP FUNCTION no_space_left CASCADE");
        var taken = await shop.TakeAsync(run, upload);

        Assert.Empty(taken.Outcome.Refusals);
        Assert.NotNull((await shop.RunAsync(run)).Log);
        Assert.Empty(shop.StagedFiles);
    }

    // The database answers as it does when its disk is full, after some rows.
    private static Task FillDiskAsync(NpgsqlDataSource owner, string table, int before) =>
        ExecuteAsync(
            owner,
            $$"""
            CREATE SEQUENCE room;
            GRANT USAGE ON room TO public;
            CREATE FUNCTION no_space_left() RETURNS trigger LANGUAGE plpgsql AS
            $body$ BEGIN
                IF nextval('room') > {{before}} THEN
                    RAISE 'could not extend file: No space left on device' USING ERRCODE = '53100';
                END IF;
                RETURN NEW;
            END $body$;
            CREATE TRIGGER no_space_left BEFORE INSERT ON {{table}}
            FOR EACH ROW EXECUTE FUNCTION no_space_left();
            """
        );

    private static async Task ExecuteAsync(NpgsqlDataSource owner, string statement)
    {
        await using var command = owner.CreateCommand(statement);
        await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }

    private static async Task<long> CountAsync(NpgsqlDataSource owner, string table)
    {
        await using var command = owner.CreateCommand($"SELECT count(*) FROM {table}");
        return (long)(await command.ExecuteScalarAsync(TestContext.Current.CancellationToken))!;
    }
}
