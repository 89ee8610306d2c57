using System.Diagnostics;
using System.Globalization;
using Xunit;

namespace WeldTrace.Persistence.Tests.PrivateServer;

public sealed class KillTests(PreparedFolder prepared)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Kill_ServerUnderTheApplication_ComesBackWithEveryCommittedRow()
    {
        using var folder = await prepared.CopyAsync();
        await using var server = PreparedFolder.Server(folder.Path);
        await server.StartAsync(Cancellation);
        var owner = server.OwnerConnectionString("weldtrace");
        await Query.RunAsync(owner, "CREATE TABLE kept AS SELECT 42 AS answer");
        var id = Assert.NotNull(server.ProcessId);

        PreparedFolder.Run("kill", "-9", Text(id));

        Assert.Equal(42, await Query.RunWhenBackAsync(owner, "SELECT answer FROM kept"));
        Assert.NotEqual(id, server.ProcessId);
    }

    [Fact]
    public async Task Kill_Application_ServerStopsByItself()
    {
        using var folder = await prepared.CopyAsync();
        using var application = await ServerHost.StartAsync(folder.Path);

        application.Process.Kill();

        await WaitUntilGoneAsync(application.ServerId);
        Assert.False(File.Exists(Path.Combine(folder.Path, "cluster", "postmaster.pid")));
    }

    [Fact]
    public async Task Kill_ApplicationWatchdogAndServerAtOnce_NextStartRecovers()
    {
        using var folder = await prepared.CopyAsync();
        using var application = await ServerHost.StartAsync(folder.Path);
        await Query.RunAsync(application.Owner, "CREATE TABLE kept AS SELECT 42 AS answer");
        var watchdog = ParentOf(application.ServerId);

        PreparedFolder.Run(
            "kill",
            "-9",
            Text(application.Process.Id),
            Text(watchdog),
            Text(application.ServerId)
        );
        await WaitUntilGoneAsync(application.ServerId);
        await application.Process.WaitForExitAsync(Cancellation);

        Assert.True(File.Exists(Path.Combine(folder.Path, "cluster", "postmaster.pid")));
        await using var next = PreparedFolder.Server(folder.Path);
        await next.StartAsync(Cancellation);
        Assert.Equal(
            42,
            await Query.RunAsync(next.OwnerConnectionString("weldtrace"), "SELECT answer FROM kept")
        );
    }

    [Fact]
    public async Task Start_SecondProcessOnTheSameFolder_IsRefused()
    {
        using var folder = await prepared.CopyAsync();
        await using var server = PreparedFolder.Server(folder.Path);
        await server.StartAsync(Cancellation);

        var answer = await ServerHost.FirstLineAsync(folder.Path);

        Assert.StartsWith(
            "refused The data folder is already in use by another process",
            answer,
            StringComparison.Ordinal
        );
    }

    private static string Text(int id) => id.ToString(CultureInfo.InvariantCulture);

    private static int ParentOf(int id)
    {
        var line = File.ReadLines($"/proc/{id}/status")
            .Single(l => l.StartsWith("PPid:", StringComparison.Ordinal));
        return int.Parse(line[5..], CultureInfo.InvariantCulture);
    }

    private static async Task WaitUntilGoneAsync(int id)
    {
        var watch = Stopwatch.StartNew();
        while (IsRunning(id))
        {
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(15), $"Process {id} still runs.");
            await Task.Delay(50, Cancellation);
        }
    }

    // A killed process whose new parent does not collect it stays in the table as a zombie.
    private static bool IsRunning(int id)
    {
        try
        {
            return !File.ReadAllText($"/proc/{id}/stat").Contains(") Z ", StringComparison.Ordinal);
        }
        catch (IOException)
        {
            return false;
        }
    }
}
