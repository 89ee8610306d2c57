using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.Roles;
using Xunit;

namespace WeldTrace.Persistence.Tests.PrivateServer;

public sealed class HostedStartTests(PreparedFolder prepared)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task StartAsync_DataFolderOnly_MigratesAndServesTheApplicationsRole()
    {
        using var folder = await prepared.CopyAsync();
        using var host = Build(folder.Path);

        await host.StartAsync(Cancellation);

        var contexts = host.Services.GetRequiredService<IDbContextFactory<ProbeContext>>();
        await using var context = await contexts.CreateDbContextAsync(Cancellation);
        Assert.Equal(
            1,
            await context.Database.ExecuteSqlRawAsync(
                "INSERT INTO ledger_probe (note) VALUES ('first')",
                Cancellation
            )
        );
        Assert.Equal(
            UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute,
            OperatingSystem.IsLinux() ? File.GetUnixFileMode(Path.Combine(folder.Path, "keys")) : 0
        );
        var health = host.Services.GetRequiredService<HealthCheckService>();
        Assert.Equal(HealthStatus.Healthy, (await health.CheckHealthAsync(Cancellation)).Status);
        await host.StopAsync(Cancellation);
        Assert.Equal(HealthStatus.Unhealthy, (await health.CheckHealthAsync(Cancellation)).Status);
    }

    [Fact]
    public async Task StartAsync_FolderOfANewerVersion_IsRefusedAndTheServerStops()
    {
        using var folder = await prepared.CopyAsync();
        await using (var newer = PreparedFolder.Server(folder.Path))
        {
            await newer.StartAsync(Cancellation);
            var connections = await PrivateDatabase.EnsureAsync(newer, Cancellation);
            await using var context = ProbeContext.Open(connections.Owner);
            await SchemaMigration.RunAsync(context, connections, [], Cancellation);
            await Query.RunAsync(
                connections.Owner,
                "INSERT INTO \"__EFMigrationsHistory\" VALUES ('20990101000000_Later', '10.0.0')"
            );
        }

        using (var host = Build(folder.Path))
        {
            var refusal = await Assert.ThrowsAsync<DatabaseStartException>(() =>
                host.StartAsync(Cancellation)
            );
            Assert.Equal(DatabaseStartProblem.NewerVersion, refusal.Problem);
        }

        Assert.False(File.Exists(Path.Combine(folder.Path, "cluster", "postmaster.pid")));
    }

    [Fact]
    public void Current_BeforeTheStart_Throws()
    {
        using var host = Build("/tmp/never-started");

        Assert.Throws<InvalidOperationException>(() =>
            host.Services.GetRequiredService<IDatabaseConnections>().Current
        );
    }

    private static IHost Build(string folder)
    {
        var builder = Host.CreateApplicationBuilder();
        builder.Configuration["Database:Folder"] = folder;
        builder.Logging.ClearProviders();
        builder.Services.AddDatabaseServer<ProbeContext>([ProbeContext.AppendOnlyTable]);
        builder.Services.AddDbContextFactory<ProbeContext>(
            (services, options) =>
                options
                    .UseNpgsql(
                        services.GetRequiredService<IDatabaseConnections>().Current.Application
                    )
                    .ConfigureWarnings(w =>
                        w.Ignore(
                            RelationalEventId.PendingModelChangesWarning,
                            RelationalEventId.MigrationsUserTransactionWarning
                        )
                    )
        );
        return builder.Build();
    }
}
