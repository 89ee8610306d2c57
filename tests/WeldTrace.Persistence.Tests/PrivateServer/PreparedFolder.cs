using System.Diagnostics;
using Microsoft.Extensions.Logging.Abstractions;
using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Database;
using Xunit;

namespace WeldTrace.Persistence.Tests.PrivateServer;

/// <summary>A data folder made once; tests take copies, which is much faster than making a new cluster each.</summary>
public sealed class PreparedFolder : IAsyncDisposable
{
    private readonly Lazy<Task<TestFolder>> _prepared = new(PrepareAsync);

    public static PrivatePostgresServer Server(string folder, bool usesLoopback = false) =>
        new(
            new PrivateServerSettings(folder) { UsesLoopback = usesLoopback },
            NullLogger<PrivatePostgresServer>.Instance
        );

    public async Task<TestFolder> CopyAsync(string suffix = "")
    {
        var copy = new TestFolder(suffix);
        Run("cp", "-a", (await _prepared.Value).Path, copy.Path);
        return copy;
    }

    public static void Run(string program, params string[] words)
    {
        using var process = Process.Start(program, words);
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
    }

    public async ValueTask DisposeAsync()
    {
        if (_prepared.IsValueCreated)
        {
            (await _prepared.Value).Dispose();
        }
    }

    private static async Task<TestFolder> PrepareAsync()
    {
        var folder = new TestFolder();
        await using var server = Server(folder.Path);
        await server.StartAsync(CancellationToken.None);
        await PrivateDatabase.EnsureAsync(server, CancellationToken.None);
        return folder;
    }
}
