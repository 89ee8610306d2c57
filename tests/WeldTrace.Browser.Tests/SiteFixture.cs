using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Playwright;
using WeldTrace.Browser.Tests;

[assembly: AssemblyFixture(typeof(SiteFixture))]

namespace WeldTrace.Browser.Tests;

/// <summary>The application with its invented workshop on a free port of this machine, and one browser for all tests.</summary>
public sealed class SiteFixture : WebApplicationFactory<Program>, IAsyncLifetime
{
    private static readonly string[] Arguments =
    [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
    ];

    private readonly string _folder = OwnSite.NewFolder();
    private readonly PreparedWorkshop _prepared = new();
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public IBrowser Browser =>
        _browser ?? throw new InvalidOperationException("The browser has not started.");

    public Uri Address => ClientOptions.BaseAddress;

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("Database:Folder", _folder);
        builder.UseSetting("Demo", "true");
        builder.UseSetting("Logging:LogLevel:Default", "Warning");
        builder.UseEnvironment("Testing");
        builder.UseStaticWebAssets();
    }

    public async ValueTask InitializeAsync()
    {
        await _prepared.FillAsync();
        await CopyWorkshopAsync(_folder);
        UseKestrel(0);
        StartServer();
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(
            new() { ExecutablePath = "/usr/bin/chromium-headless-shell", Args = Arguments }
        );
    }

    /// <summary>Lays the invented workshop, as filled once, into a folder for a site of a test's own.</summary>
    public Task CopyWorkshopAsync(string folder) => _prepared.CopyToAsync(folder);

    public override async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
        await base.DisposeAsync();
        _prepared.Dispose();
        if (Directory.Exists(_folder))
        {
            Directory.Delete(_folder, recursive: true);
        }
    }
}
