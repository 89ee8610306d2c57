using System.IO.Compression;
using System.Reflection;
using System.Text;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Npgsql;
using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Database;
using Xunit;

namespace WeldTrace.Persistence.Tests.Upgrades;

/// <summary>
/// The invented workshop as the program of that day wrote it: 625 ledger entries of nineteen vessels, in the structure that it had then. The
/// file is what pg_dump gave of its database (rows only, as COPY takes them); the program of that day made it, none of today's.
/// </summary>
internal static class OldWorkshop
{
    public const string Migration = "20261126170159_Lots";
    public const int LedgerEntries = 625;

    private const string EndOfRows = "\\.";

    // What the program of that day let its role only add to.
    private static readonly string[] AppendOnlyThen =
    [
        "ledger_entries",
        "ledger_nodes",
        "checkpoints",
        "checkpoint_stamps",
        "signatures",
        "step_sign_offs",
        "heat_treatments",
        "joint_cleanings",
        "joint_fit_ups",
        "specimen_tests",
        "attachments",
        "process_logs",
        "process_log_chunks",
        "process_log_levels",
    ];

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    /// <summary>Makes the database of that day with its rows.</summary>
    public static async Task<TestDatabase> CreateAsync(PostgresServerFixture server)
    {
        var database = await server.CreateEmptyDatabaseAsync();
        await using (var db = WeldTraceDatabases.Open(Unpooled(database.Connections.Owner)))
        {
            await db.GetService<IMigrator>().MigrateAsync(Migration, Cancellation);
        }

        await LoadAsync(database.Connections.Owner);
        await TableGrants.ApplyAsync(
            database.Connections,
            ["public"],
            AppendOnlyThen,
            Cancellation
        );
        return database;
    }

    /// <summary>Starts the services that the application starts before it serves a page, and stops them.</summary>
    public static async Task StartTodaysProgramAsync(TestDatabase database)
    {
        var builder = Host.CreateApplicationBuilder();
        using var folder = new TestFolder();
        builder.Configuration.AddInMemoryCollection(
            new Dictionary<string, string?>
            {
                ["ConnectionStrings:WeldTrace"] = Unpooled(database.Connections.Owner),
                ["ConnectionStrings:WeldTraceApp"] = Unpooled(database.Connections.Application),
                ["Database:Folder"] = folder.Path,
            }
        );
        builder.Logging.ClearProviders();
        builder.Services.AddPersistence();
        using var host = builder.Build();
        await host.StartAsync(Cancellation);
        await host.StopAsync(Cancellation);
    }

    private static async Task LoadAsync(string owner)
    {
        await using var connection = new NpgsqlConnection(Unpooled(owner));
        await connection.OpenAsync(Cancellation);
        // The first migration makes the head of an empty ledger; the dump has the head of this one.
        await using var command = new NpgsqlCommand("DELETE FROM ledger_head", connection);
        await command.ExecuteNonQueryAsync(Cancellation);
        using var rows = Rows();
        while (await rows.ReadLineAsync(Cancellation) is { } copy)
        {
            await using var into = await connection.BeginTextImportAsync(
                copy.TrimEnd(';'),
                Cancellation
            );
            while (await rows.ReadLineAsync(Cancellation) is { } row && row != EndOfRows)
            {
                await into.WriteAsync(row + "\n");
            }
        }
    }

    private static StreamReader Rows() =>
        new(
            new GZipStream(
                Assembly.GetExecutingAssembly().GetManifestResourceStream($"{Migration}.copy.gz")!,
                CompressionMode.Decompress
            ),
            Encoding.UTF8
        );

    private static string Unpooled(string connection) =>
        new NpgsqlConnectionStringBuilder(connection) { Pooling = false }.ConnectionString;
}
