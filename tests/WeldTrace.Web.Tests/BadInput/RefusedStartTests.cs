using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.BadInput;

/// <summary>The program itself, started on a data folder that it must not use: it says why, ends, and leaves the folder as it is.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class RefusedStartTests(DemoSite site)
{
    private static readonly TimeSpan _patience = TimeSpan.FromSeconds(60);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Start_SecondTimeOnTheSameFolder_IsRefusedAndTheFirstGoesOn()
    {
        var (status, said) = await StartAsync(site.Folder);

        Assert.Equal(1, status);
        Assert.Contains(
            "The data folder is already in use by another process",
            said,
            StringComparison.Ordinal
        );
        var visit = await site.VisitAsync(null);
        Assert.Equal(HttpStatusCode.OK, (await visit.GetAsync(Routes.SignIn)).StatusCode);
    }

    [Fact]
    public async Task Start_FolderOfANewerVersion_IsRefusedAndNotChanged()
    {
        using var folder = new TestFolder();
        await WriteAsNewerAsync(folder.Path);

        var (status, said) = await StartAsync(folder.Path);

        Assert.Equal(1, status);
        Assert.Contains("20990101000000_Later", said, StringComparison.Ordinal);
        Assert.Contains("newer", said, StringComparison.Ordinal);
        Assert.Equal(
            1L,
            await CountAsync(folder.Path, "SELECT count(*) FROM \"__EFMigrationsHistory\"")
        );
    }

    private static async Task WriteAsNewerAsync(string folder)
    {
        await using var server = Server(folder);
        await server.StartAsync(Cancellation);
        var connections = await PrivateDatabase.EnsureAsync(server, Cancellation);
        await QueryAsync(
            connections.Owner,
            """
            CREATE TABLE "__EFMigrationsHistory" (migration_id text PRIMARY KEY, product_version text NOT NULL);
            INSERT INTO "__EFMigrationsHistory" VALUES ('20990101000000_Later', '99.0.0') RETURNING 1;
            """
        );
    }

    private static async Task<object?> CountAsync(string folder, string query)
    {
        await using var server = Server(folder);
        await server.StartAsync(Cancellation);
        return await QueryAsync(server.OwnerConnectionString(PrivateDatabase.Name), query);
    }

    private static async Task<object?> QueryAsync(string connection, string query)
    {
        await using var owner = new NpgsqlConnection(connection);
        await owner.OpenAsync(Cancellation);
        await using var command = new NpgsqlCommand(query, owner);
        return await command.ExecuteScalarAsync(Cancellation);
    }

    private static PrivatePostgresServer Server(string folder) =>
        new(new PrivateServerSettings(folder), NullLogger<PrivatePostgresServer>.Instance);

    private static async Task<(int Status, string Said)> StartAsync(string folder)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "WeldTrace.Web.dll");
        var start = new ProcessStartInfo(
            "dotnet",
            [
                "exec",
                program,
                "--urls",
                $"http://127.0.0.1:{FreePort()}",
                "--Database:Folder",
                folder,
            ]
        )
        {
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };
        using var process = Process.Start(start)!;
        using var limit = new CancellationTokenSource(_patience);
        try
        {
            var said = process.StandardError.ReadToEndAsync(limit.Token);
            await process.StandardOutput.ReadToEndAsync(limit.Token);
            await process.WaitForExitAsync(limit.Token);
            return (process.ExitCode, await said);
        }
        finally
        {
            process.Kill(entireProcessTree: true);
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
