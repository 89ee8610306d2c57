using System.Globalization;
using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.Roles;
using Xunit;

namespace WeldTrace.Persistence.Tests.PrivateServer;

public sealed class RestartTests(PreparedFolder prepared)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task StartAsync_SecondTime_FindsTheRowsOfTheFirst()
    {
        using var folder = await prepared.CopyAsync();
        await using (var first = PreparedFolder.Server(folder.Path))
        {
            await first.StartAsync(Cancellation);
            await Query.RunAsync(
                first.OwnerConnectionString("weldtrace"),
                "CREATE TABLE kept AS SELECT 42 AS answer"
            );
        }

        await using var second = PreparedFolder.Server(folder.Path);
        await second.StartAsync(Cancellation);

        Assert.Equal(
            42,
            await Query.RunAsync(
                second.OwnerConnectionString("weldtrace"),
                "SELECT answer FROM kept"
            )
        );
    }

    [Fact]
    public async Task StopAsync_RunningServer_LeavesNoProcessAndFreesTheFolder()
    {
        using var folder = await prepared.CopyAsync();
        await using var server = PreparedFolder.Server(folder.Path);
        await server.StartAsync(Cancellation);
        var id = Assert.NotNull(server.ProcessId);

        await server.StopAsync();

        Assert.False(Directory.Exists($"/proc/{id}"));
        await using var next = PreparedFolder.Server(folder.Path);
        await next.StartAsync(Cancellation);
    }

    [Fact]
    public async Task StopAsync_AskedForTwiceAtOnce_EndsForBothWhenTheServerHasGone()
    {
        using var folder = await prepared.CopyAsync();
        await using var server = PreparedFolder.Server(folder.Path);
        await server.StartAsync(Cancellation);
        var id = Assert.NotNull(server.ProcessId);

        var first = server.StopAsync();
        await server.StopAsync();

        Assert.False(Directory.Exists($"/proc/{id}"));
        await first;
    }

    [Fact]
    public async Task StartAsync_WhileAnotherUsesTheFolder_IsRefusedAndHarmless()
    {
        using var folder = await prepared.CopyAsync();
        await using var first = PreparedFolder.Server(folder.Path);
        await first.StartAsync(Cancellation);

        var refusal = await Refusals.OfAsync(folder.Path);

        Assert.Equal(DatabaseStartProblem.FolderInUse, refusal.Problem);
        Assert.Contains(
            "already in use by another process",
            refusal.Message,
            StringComparison.Ordinal
        );
        Assert.Equal(1, await Query.RunAsync(first.OwnerConnectionString("weldtrace"), "SELECT 1"));
    }

    [Fact]
    public async Task StartAsync_StalePidFileNamesALivingStranger_StartsAllTheSame()
    {
        using var folder = await prepared.CopyAsync();
        var stranger = Environment.ProcessId.ToString(CultureInfo.InvariantCulture);
        await File.WriteAllTextAsync(
            Path.Combine(folder.Path, "cluster", "postmaster.pid"),
            stranger + "\n",
            Cancellation
        );
        await using var server = PreparedFolder.Server(folder.Path);

        await server.StartAsync(Cancellation);

        Assert.NotEqual(Environment.ProcessId, server.ProcessId);
    }

    [Fact]
    public async Task StartAsync_PathTooLongForASocket_ListensOnLoopbackOnly()
    {
        using var folder = await prepared.CopyAsync(new string('x', 100));
        await using var server = PreparedFolder.Server(folder.Path);

        await server.StartAsync(Cancellation);

        var owner = server.OwnerConnectionString("weldtrace");
        Assert.Contains("Host=127.0.0.1", owner, StringComparison.Ordinal);
        Assert.Equal("127.0.0.1", await Query.RunAsync(owner, "SHOW listen_addresses"));
    }

    [Fact]
    public async Task StartAsync_ClusterOfAVersionThatIsNotInstalled_SaysWhichToInstall()
    {
        using var folder = await prepared.CopyAsync();
        await File.WriteAllTextAsync(
            Path.Combine(folder.Path, "cluster", "PG_VERSION"),
            "99\n",
            Cancellation
        );

        var refusal = await Refusals.OfAsync(folder.Path);

        Assert.Equal(DatabaseStartProblem.NewerVersion, refusal.Problem);
        Assert.Contains("postgresql-99", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task StartAsync_PasswordFileLost_SaysWhatToPutBack()
    {
        using var folder = await prepared.CopyAsync();
        File.Delete(Path.Combine(folder.Path, "db-password"));

        var refusal = await Refusals.OfAsync(folder.Path);

        Assert.Equal(DatabaseStartProblem.PasswordLost, refusal.Problem);
    }

    [Fact]
    public async Task EnsureAsync_ApplicationPasswordLost_GetsANewOne()
    {
        using var folder = await prepared.CopyAsync();
        File.Delete(Path.Combine(folder.Path, "app-password"));
        await using var server = PreparedFolder.Server(folder.Path);
        await server.StartAsync(Cancellation);

        var connections = await PrivateDatabase.EnsureAsync(server, Cancellation);

        Assert.Equal(1, await Query.RunAsync(connections.Application, "SELECT 1"));
    }
}
