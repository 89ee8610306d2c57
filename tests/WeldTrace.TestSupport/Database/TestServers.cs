using DotNet.Testcontainers.Builders;
using Microsoft.Extensions.Logging.Abstractions;
using Testcontainers.PostgreSql;
using WeldTrace.Persistence.PrivateServer;

namespace WeldTrace.TestSupport.Database;

/// <summary>Finds a server for the tests: one that is given, else the machine's own PostgreSQL, else a container.</summary>
public static class TestServers
{
    private const string GivenVariable = "WELDTRACE_TEST_DATABASE";
    private const string ImageVariable = "WELDTRACE_TEST_IMAGE";
    private const string DefaultImage = "postgres:15";
    private const int Sessions = 300;

    public static async Task<TestServer> StartAsync()
    {
        if (Environment.GetEnvironmentVariable(GivenVariable) is { Length: > 0 } given)
        {
            return new TestServer(given, null);
        }

        if (Environment.GetEnvironmentVariable(ImageVariable) is { Length: > 0 } image)
        {
            return await StartContainerAsync(image);
        }

        try
        {
            return await StartPrivateAsync();
        }
        catch (DatabaseStartException missing)
            when (missing.Problem == DatabaseStartProblem.NoServerPrograms)
        {
            return await StartContainerAsync(DefaultImage);
        }
    }

    private static async Task<TestServer> StartPrivateAsync()
    {
        TestFolder.RemoveAbandoned();
        var folder = new TestFolder();
        var settings = new PrivateServerSettings(folder.Path)
        {
            IsDurable = false,
            MaximumSessions = Sessions,
        };
        var server = new PrivatePostgresServer(
            settings,
            NullLogger<PrivatePostgresServer>.Instance
        );
        var lifetime = new ServerInFolder(server, folder);
        try
        {
            await server.StartAsync(CancellationToken.None);
            return new TestServer(server.OwnerConnectionString("postgres"), lifetime);
        }
        catch
        {
            await lifetime.DisposeAsync();
            throw;
        }
    }

    private static async Task<TestServer> StartContainerAsync(string image)
    {
        try
        {
            var container = new PostgreSqlBuilder(image)
                .WithCommand("-c", FormattableString.Invariant($"max_connections={Sessions}"))
                .Build();
            await container.StartAsync();
            return new TestServer(container.GetConnectionString(), container);
        }
        catch (DockerUnavailableException)
        {
            throw new InvalidOperationException(
                $"The tests need PostgreSQL: run 'apt-get install postgresql', or start a container engine, or set {GivenVariable} to the connection string of a server whose user may create databases and roles."
            );
        }
    }

    private sealed class ServerInFolder(PrivatePostgresServer server, TestFolder folder)
        : IAsyncDisposable
    {
        public async ValueTask DisposeAsync()
        {
            await server.DisposeAsync();
            folder.Dispose();
        }
    }
}
