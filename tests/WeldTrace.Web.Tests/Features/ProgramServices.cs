using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Persistence;
using WeldTrace.Web.Features;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Tests.Features;

/// <summary>All services of the program as it registers them, on another database and clock, without its server.</summary>
internal static class ProgramServices
{
    /// <param name="contexts">Where the records are.</param>
    /// <param name="clock">What time it is.</param>
    /// <param name="folder">Data folder.</param>
    public static ServiceProvider Make(
        IDbContextFactory<WeldTraceDbContext> contexts,
        TimeProvider clock,
        string folder
    )
    {
        var configuration = new ConfigurationBuilder()
            .AddInMemoryCollection([new("Database:Folder", folder)])
            .Build();
        var services = new ServiceCollection()
            .AddLogging()
            .AddSingleton<IConfiguration>(configuration)
            .AddPersistence()
            .AddSecurity(configuration)
            .AddReading()
            .AddFeatures()
            .AddSingleton(clock)
            .AddSingleton(contexts)
            .AddScoped(_ => contexts.CreateDbContext());
        return services.BuildServiceProvider();
    }
}
