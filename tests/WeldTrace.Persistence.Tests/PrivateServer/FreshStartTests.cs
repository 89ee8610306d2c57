using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Database;
using Xunit;

namespace WeldTrace.Persistence.Tests.PrivateServer;

public sealed class FreshStartTests
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    [Fact]
    public async Task StartAsync_FolderWithRemainsOfAKilledFirstStart_MakesTheClusterAnew()
    {
        using var folder = new TestFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "cluster.new", "base"));
        await File.WriteAllTextAsync(
            Path.Combine(folder.Path, "cluster.new", "PG_VERSION"),
            "half",
            TestContext.Current.CancellationToken
        );
        await using var server = PreparedFolder.Server(folder.Path);

        await server.StartAsync(TestContext.Current.CancellationToken);
        var connections = await PrivateDatabase.EnsureAsync(
            server,
            TestContext.Current.CancellationToken
        );

        Assert.Equal(
            "weldtrace_app",
            await Query.RunAsync(connections.Application, "SELECT current_user::text")
        );
        Assert.Equal("on", await Query.RunAsync(connections.Owner, "SHOW data_checksums"));
        Assert.False(Directory.Exists(Path.Combine(folder.Path, "cluster.new")));
    }

    [Fact]
    public async Task StartAsync_EmptyFolder_KeepsPasswordsAndClusterFromOthers()
    {
        using var folder = new TestFolder();
        await using var server = PreparedFolder.Server(folder.Path);

        await server.StartAsync(TestContext.Current.CancellationToken);
        server.ApplicationPassword();

        Assert.Equal(OwnerOnly, Mode("db-password"));
        Assert.Equal(OwnerOnly, Mode("app-password"));
        Assert.Equal(OwnerOnly | UnixFileMode.UserExecute, Mode("cluster"));
        Assert.Equal(
            ["app-password", "app.lock", "cluster", "db-password"],
            Directory.EnumerateFileSystemEntries(folder.Path).Select(Path.GetFileName).Order()
        );
        Assert.Equal(
            "",
            await Query.RunAsync(server.OwnerConnectionString("postgres"), "SHOW listen_addresses")
        );

        UnixFileMode Mode(string name) =>
            OperatingSystem.IsLinux() ? File.GetUnixFileMode(Path.Combine(folder.Path, name)) : 0;
    }

    [Fact]
    public async Task StartAsync_WithoutServerPrograms_SaysWhichPackageToInstall()
    {
        using var folder = new TestFolder();
        Directory.CreateDirectory(folder.Path);
        var settings = new PrivateServerSettings(Path.Combine(folder.Path, "data"))
        {
            BinFolder = folder.Path,
        };

        var refusal = await Refusals.OfAsync(settings);

        Assert.Equal(DatabaseStartProblem.NoServerPrograms, refusal.Problem);
        Assert.Contains("apt-get install postgresql", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task StartAsync_DiskFullWhileMakingTheCluster_SaysSoAndLeavesNoCluster()
    {
        using var folder = new TestFolder();
        // The words are those of initdb on a full disk; the program stands in for one.
        Refusals.WriteProgram(
            folder.Path,
            "initdb",
            "echo 'initdb: error: could not write file: No space left on device' >&2; exit 1"
        );
        Refusals.WriteProgram(folder.Path, "postgres", "exit 1");
        var data = Path.Combine(folder.Path, "data");

        var refusal = await Refusals.OfAsync(
            new PrivateServerSettings(data) { BinFolder = folder.Path }
        );

        Assert.Equal(DatabaseStartProblem.NoSpaceLeft, refusal.Problem);
        Assert.Contains(data, refusal.Message, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(data, "cluster")));
    }

    [Fact]
    public async Task StartAsync_BelowAPrivateFolder_NamesTheFolderThatStandsInTheWay()
    {
        using var folder = new TestFolder();
        var barrier = Path.Combine(folder.Path, "private");
        Directory.CreateDirectory(barrier);
        PreparedFolder.Run("chmod", "700", barrier);
        var settings = new PrivateServerSettings(Path.Combine(barrier, "deep", "data"));

        if (Environment.IsPrivilegedProcess)
        {
            var refusal = await Refusals.OfAsync(settings);
            Assert.Equal(DatabaseStartProblem.FolderNotWalkable, refusal.Problem);
            Assert.Contains($"chmod o+x {barrier},", refusal.Message, StringComparison.Ordinal);
        }
        else
        {
            // Only root has to step down to another account; for an ordinary user the folder is no obstacle.
            await using var server = PreparedFolder.Server(settings.Folder);
            await server.StartAsync(TestContext.Current.CancellationToken);
            Assert.NotNull(server.ProcessId);
        }
    }
}
