using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.SiteSettings.Key;
using WeldTrace.Web.Features.Vessels.Bundle;

namespace WeldTrace.Web.Tests.Features.Vessels;

/// <summary>A vessel that did not go as planned, and the bundle of its history.</summary>
public sealed class RepairedVesselBundle(PostgresServerFixture server) : IAsyncLifetime
{
    internal RepairedVessel Vessel { get; private set; } = null!;

    internal byte[] Bytes { get; private set; } = [];

    public async ValueTask InitializeAsync()
    {
        Vessel = await RepairedVessel.MakeAsync(server);
        Bytes = await WriteAsync(Vessel.Routed);
    }

    public ValueTask DisposeAsync() => Vessel.Routed.DisposeAsync();

    private static async Task<byte[]> WriteAsync(RoutedVessel vessel)
    {
        var site = vessel.Site;
        using var folder = new TestFolder();
        Directory.CreateDirectory(folder.Path);
        await using var services = ProgramServices.Make(site.Database, site.Clock, folder.Path);
        await using var scope = services.CreateAsyncScope();
        await scope
            .ServiceProvider.GetServices<IHostedService>()
            .OfType<KeyOnRecordHandler>()
            .Single()
            .StartAsync(CancellationToken.None);
        var reader = scope.ServiceProvider.GetRequiredService<BundleReader>();
        await using var file = new FileStream(
            Path.GetTempFileName(),
            new FileStreamOptions
            {
                Access = FileAccess.ReadWrite,
                Mode = FileMode.Create,
                Options = FileOptions.DeleteOnClose,
            }
        );
        Assert.True(
            await reader.WriteAsync(
                vessel.Serial,
                new Uri("https://records.example/"),
                SamplePeople.Auditor,
                file,
                CancellationToken.None
            )
        );
        file.Position = 0;
        var bytes = new byte[file.Length];
        await file.ReadExactlyAsync(bytes);
        return bytes;
    }
}
