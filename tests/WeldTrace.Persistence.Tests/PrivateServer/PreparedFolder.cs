using System.Diagnostics;
using Microsoft.Extensions.Logging.Abstractions;
using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Database;
using Xunit;

namespace WeldTrace.Persistence.Tests.PrivateServer;

/// <summary>A data folder made once; tests take copies, which is much faster than making a new cluster each.</summary>
public sealed class PreparedFolder : IAsyncLifetime
{
    private readonly TestFolder _prepared = new();

    public async ValueTask InitializeAsync()
    {
        await using var server = Server(_prepared.Path);
        await server.StartAsync(CancellationToken.None);
        await PrivateDatabase.EnsureAsync(server, CancellationToken.None);
    }

    public static PrivatePostgresServer Server(string folder, bool usesLoopback = false) =>
        new(
            new PrivateServerSettings(folder) { UsesLoopback = usesLoopback },
            NullLogger<PrivatePostgresServer>.Instance
        );

    public TestFolder Copy(string suffix = "")
    {
        var copy = new TestFolder(suffix);
        Run("cp", "-a", _prepared.Path, copy.Path);
        return copy;
    }

    public static void Run(string program, params string[] words)
    {
        using var process = Process.Start(program, words);
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
    }

    public ValueTask DisposeAsync()
    {
        _prepared.Dispose();
        return ValueTask.CompletedTask;
    }
}
