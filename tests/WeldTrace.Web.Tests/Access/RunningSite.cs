using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Tests.Features;

namespace WeldTrace.Web.Tests.Access;

/// <summary>The whole application on the database of a site that a test has brought to where it wants it, and by the test's clock.</summary>
internal sealed class RunningSite : WebApplicationFactory<Program>
{
    private readonly TestFolder _folder = new();
    private readonly string? _kept;
    private readonly WorkingSite _site;

    /// <param name="site">Whose database and clock it runs on.</param>
    /// <param name="kept">Data folder that outlives it, as at a restart; null when it has one of its own.</param>
    public RunningSite(WorkingSite site, string? kept = null)
    {
        _kept = kept;
        _site = site;
        UseKestrel(0);
        StartServer();
    }

    public Uri Address => ClientOptions.BaseAddress;

    /// <summary>A visit of somebody who signs in with <see cref="WorkingSite.Password"/>.</summary>
    /// <param name="name">Printed name of a sample person.</param>
    public async Task<SiteVisit> SignInAsync(string name)
    {
        var visit = new SiteVisit(Address);
        await visit.SignInAsync(name.ToLowerInvariant().Replace(' ', '.'), WorkingSite.Password);
        return visit;
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        _folder.Dispose();
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("Database:Folder", _kept ?? _folder.Path);
        builder.UseSetting("ConnectionStrings:WeldTrace", _site.Database.OwnerConnectionString);
        builder.UseSetting("ConnectionStrings:WeldTraceApp", _site.Database.ConnectionString);
        builder.UseSetting("Logging:LogLevel:Default", "Error");
        builder.UseEnvironment("Testing");
        builder.UseStaticWebAssets();
        builder.ConfigureTestServices(services =>
            services.Replace(ServiceDescriptor.Singleton<TimeProvider>(_site.Clock))
        );
    }
}
