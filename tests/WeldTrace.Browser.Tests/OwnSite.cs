using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.TestSupport.Database;

namespace WeldTrace.Browser.Tests;

/// <summary>An application of a test's own, on a data folder that outlives it, so that it can be started again.</summary>
internal sealed class OwnSite(
    string folder,
    int port,
    bool isDemonstration,
    TimeProvider? clock = null
) : WebApplicationFactory<Program>
{
    public Uri Address => new($"http://127.0.0.1:{port}");

    /// <summary>A port that was free a moment ago: a page keeps its address when its site starts again.</summary>
    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public static string NewFolder() =>
        Path.Combine(TestFolder.Root, "weld-records-" + Guid.CreateVersion7().ToString("N"));

    public OwnSite Started()
    {
        UseKestrel(port);
        StartServer();
        return this;
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("Database:Folder", folder);
        builder.UseSetting("Demo", isDemonstration ? "true" : "false");
        builder.UseSetting("Logging:LogLevel:Default", "Warning");
        builder.UseEnvironment("Testing");
        builder.UseStaticWebAssets();
        if (clock is not null)
        {
            builder.ConfigureTestServices(services => services.AddSingleton(clock));
        }
    }
}
