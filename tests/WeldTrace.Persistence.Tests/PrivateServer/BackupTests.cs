using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Database;
using Xunit;

namespace WeldTrace.Persistence.Tests.PrivateServer;

public sealed class BackupTests(PreparedFolder prepared)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Restore_BackupOfARunningOrStoppedServer_BringsRowsRightsAndKeys(
        bool isRunning
    )
    {
        using var folder = await prepared.CopyAsync();
        using var restored = new TestFolder();
        using var backups = new TestFolder();
        var backup = Path.Combine(Directory.CreateDirectory(backups.Path).FullName, "saved.tar.gz");
        await WriteKeyAsync(folder.Path);
        await using var server = PreparedFolder.Server(folder.Path);
        await server.StartAsync(Cancellation);
        await MigrateAsync(
            server.OwnerConnectionString(PrivateDatabase.Name),
            server.ApplicationPassword()
        );
        await (isRunning ? Task.CompletedTask : server.StopAsync());

        await Script.RunAsync("backup.sh", "--data", folder.Path, "--to", backup);
        await Script.RunAsync("restore.sh", "--from", backup, "--data", restored.Path);

        await using var again = PreparedFolder.Server(restored.Path);
        await again.StartAsync(Cancellation);
        var connections = await PrivateDatabase.EnsureAsync(again, Cancellation);
        Assert.Equal(
            "kept",
            await Query.RunAsync(connections.Application, "SELECT note FROM ledger_probe")
        );
        Assert.Equal(
            "42501",
            await Query.RefusalAsync(connections.Application, "DELETE FROM ledger_probe")
        );
        Assert.Equal("secret", await File.ReadAllTextAsync(KeyIn(restored.Path), Cancellation));
    }

    [Fact]
    public async Task Restore_IntoAFolderInUse_IsRefused()
    {
        using var folder = await prepared.CopyAsync();
        var backup = Path.Combine(folder.Path, "any.tar.gz");
        await File.WriteAllTextAsync(backup, "", Cancellation);

        var said = await Script.RefusalAsync("restore.sh", "--from", backup, "--data", folder.Path);

        Assert.Contains("a restore never overwrites", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Restore_DamagedBackup_IsRefusedAndLeavesNoCluster()
    {
        using var restored = new TestFolder();
        using var backups = new TestFolder();
        var backup = Path.Combine(Directory.CreateDirectory(backups.Path).FullName, "saved.tar.gz");
        await File.WriteAllTextAsync(backup, "no archive", Cancellation);

        var said = await Script.RefusalAsync(
            "restore.sh",
            "--from",
            backup,
            "--data",
            restored.Path
        );

        Assert.Contains("is damaged", said, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(restored.Path, "cluster")));
    }

    private static string KeyIn(string folder) => Path.Combine(folder, "keys", "site key");

    private static async Task WriteKeyAsync(string folder)
    {
        Directory.CreateDirectory(Path.Combine(folder, "keys"));
        await File.WriteAllTextAsync(KeyIn(folder), "secret", Cancellation);
    }

    private static async Task MigrateAsync(string owner, string applicationPassword)
    {
        var application = new Npgsql.NpgsqlConnectionStringBuilder(owner)
        {
            Username = PrivateDatabase.ApplicationRoleName,
            Password = applicationPassword,
        };
        await using var context = ProbeContext.Open(owner);
        await SchemaMigration.RunAsync(
            context,
            new DatabaseConnections(owner, application.ConnectionString),
            [ProbeContext.AppendOnlyTable],
            Cancellation
        );
        await Query.RunAsync(
            application.ConnectionString,
            "INSERT INTO ledger_probe (note) VALUES ('kept')"
        );
    }
}
