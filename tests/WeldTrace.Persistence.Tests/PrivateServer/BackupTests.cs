using WeldTrace.Persistence.PrivateServer;
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

    /// <summary>A server that archives its log: what was written after the base backup comes back, up to the wanted moment and no further.</summary>
    [Fact]
    public async Task Restore_BaseBackupOfAServer_GoesOnWithItsLogToTheWantedMoment()
    {
        using var folder = await prepared.CopyAsync();
        using var restored = new TestFolder();
        using var backups = new TestFolder();
        var backup = Path.Combine(Directory.CreateDirectory(backups.Path).FullName, "saved.tar.gz");
        var log = Directory.CreateDirectory(Path.Combine(backups.Path, "wal")).FullName;
        PreparedFolder.Run("chmod", "777", log);
        await WriteKeyAsync(folder.Path);
        await using var server = await StartArchivingAsync(folder.Path, log);
        var owner = server.OwnerConnectionString(PrivateDatabase.Name);

        await Script.RunAsync(
            "backup.sh",
            "--data",
            folder.Path,
            "--server",
            LibpqOf(owner),
            "--to",
            backup
        );
        await Query.RunAsync(owner, "INSERT INTO ledger_probe (note) VALUES ('since')");
        var moment = (string)(await Query.RunAsync(owner, "SELECT clock_timestamp()::text"))!;
        await Query.RunAsync(owner, "INSERT INTO ledger_probe (note) VALUES ('too late')");
        await Query.RunAsync(owner, "SELECT pg_switch_wal()::text");
        await server.StopAsync();
        await Script.RunAsync(
            "restore.sh",
            "--from",
            backup,
            "--data",
            restored.Path,
            "--cluster",
            Path.Combine(restored.Path, "cluster"),
            "--wal",
            log,
            "--until",
            moment
        );

        File.Copy(PasswordIn(folder.Path), PasswordIn(restored.Path));
        await using var again = PreparedFolder.Server(restored.Path);
        await again.StartAsync(Cancellation);
        Assert.Equal(
            "kept, since",
            await Query.RunAsync(
                again.OwnerConnectionString(PrivateDatabase.Name),
                "SELECT string_agg(note, ', ' ORDER BY note) FROM ledger_probe"
            )
        );
        Assert.Equal("secret", await File.ReadAllTextAsync(KeyIn(restored.Path), Cancellation));
    }

    /// <summary>A log that is brought, and others that come and go, while the files are read: what was whole before is saved whole.</summary>
    [Fact]
    public async Task Restore_BackupOfUploadsThatChangedMeanwhile_BringsWhatWasWhole()
    {
        using var folder = await prepared.CopyAsync();
        using var restored = new TestFolder();
        using var backups = new TestFolder();
        var backup = Path.Combine(Directory.CreateDirectory(backups.Path).FullName, "saved.tar.gz");
        var whole = new byte[20_000_000];
        Random.Shared.NextBytes(whole);
        var uploads = Directory.CreateDirectory(Path.Combine(folder.Path, "uploads")).FullName;
        await File.WriteAllBytesAsync(Path.Combine(uploads, "whole"), whole, Cancellation);
        await File.WriteAllBytesAsync(Path.Combine(uploads, "growing"), whole, Cancellation);
        using var ending = new CancellationTokenSource();
        var changing = Task.Run(() => Change(uploads, ending.Token), Cancellation);

        await Script.RunAsync("backup.sh", "--data", folder.Path, "--to", backup);
        await ending.CancelAsync();
        await changing;
        await Script.RunAsync("restore.sh", "--from", backup, "--data", restored.Path);

        Assert.True(
            new FileInfo(Path.Combine(uploads, "growing")).Length > whole.Length,
            "Nothing grew meanwhile."
        );
        Assert.Equal(
            whole,
            await File.ReadAllBytesAsync(
                Path.Combine(restored.Path, "uploads", "whole"),
                Cancellation
            )
        );
    }

    private static void Change(string uploads, CancellationToken end)
    {
        for (var turn = 0; !end.IsCancellationRequested; turn++)
        {
            File.AppendAllText(Path.Combine(uploads, "growing"), "a sample\n");
            File.WriteAllText(Path.Combine(uploads, $"passing-{turn}"), "a sample\n");
            File.Delete(Path.Combine(uploads, $"passing-{turn - 20}"));
        }
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
    public async Task Restore_DumpOfThePrivateDatabase_IntoTheFolderOfAServer_IsRefused()
    {
        using var folder = await prepared.CopyAsync();
        using var restored = new TestFolder();
        using var backups = new TestFolder();
        var backup = Path.Combine(Directory.CreateDirectory(backups.Path).FullName, "saved.tar.gz");
        await Script.RunAsync("backup.sh", "--data", folder.Path, "--to", backup);

        var said = await Script.RefusalAsync(
            "restore.sh",
            "--from",
            backup,
            "--data",
            restored.Path,
            "--cluster",
            Path.Combine(restored.Path, "server")
        );

        Assert.Contains("leave out --cluster", said, StringComparison.Ordinal);
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

    private static async Task<PrivatePostgresServer> StartArchivingAsync(string folder, string log)
    {
        await using (var first = PreparedFolder.Server(folder))
        {
            await first.StartAsync(Cancellation);
            var owner = first.OwnerConnectionString(PrivateDatabase.Name);
            await MigrateAsync(owner, first.ApplicationPassword());
            await Query.RunAsync(owner, "ALTER SYSTEM SET archive_mode = on");
            await Query.RunAsync(
                owner,
                $"ALTER SYSTEM SET archive_command = 'test ! -f {log}/%f && cp %p {log}/%f'"
            );
        }

        var server = PreparedFolder.Server(folder);
        await server.StartAsync(Cancellation);
        return server;
    }

    // The same server for the programs of PostgreSQL.
    private static string LibpqOf(string connection)
    {
        var known = new Npgsql.NpgsqlConnectionStringBuilder(connection);
        return FormattableString.Invariant(
            $"host={known.Host} port={known.Port} user={known.Username} password={known.Password}"
        );
    }

    private static string PasswordIn(string folder) => Path.Combine(folder, "db-password");

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
