using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using WeldTrace.Domain.Access;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Features.LedgerView.Checkpoints;

namespace WeldTrace.Web.Tests.Access;

[CollectionDefinition]
public sealed class DemoSiteGroup : ICollectionFixture<DemoSite>;

/// <summary>A second site for what takes long, beside the first.</summary>
[CollectionDefinition]
public sealed class SecondDemoSiteGroup : ICollectionFixture<DemoSite>;

/// <summary>The whole application with its invented workshop, on a database server of its own and a free port of this machine.</summary>
public sealed class DemoSite : WebApplicationFactory<Program>, IAsyncLifetime
{
    private readonly TestFolder _folder = new();
    private readonly Dictionary<string, SiteVisit> _visits = [];

    /// <summary>Makes the signing of a checkpoint fail, as a fault of the program would.</summary>
    public bool IsSigningBroken { get; set; }

    /// <summary>What was logged by the program's own code, of the level of information and above.</summary>
    public KeptLog Log { get; } = new();

    public Uri Address => ClientOptions.BaseAddress;

    public string Folder => _folder.Path;

    public async ValueTask InitializeAsync()
    {
        UseKestrel(0);
        StartServer();
        // The demonstration has every kind of record but these three, and the archive of a vessel.
        await ReadAsync(async db =>
        {
            var part = await db.Components.FirstAsync();
            db.Add(SampleHeat.Entered("180", [new TreatedPart(part.Id, part.Serial, false)]));
            db.Add(Accept.Value(OfAnotherHall()));
            db.Add(Accept.Value(OfTheStore()));
            return await db.SaveAsync(CancellationToken.None);
        });
        await ArchivedVessel.MakeAsync(this);
        await Services.GetRequiredService<CheckpointDesk>().TakeAsync(CancellationToken.None);
    }

    private static Outcome<SystemToken> OfAnotherHall() =>
        SystemToken.Give(
            "Bench of the other hall",
            TokenScope.PushBenchReadings,
            30,
            new string('0', 64),
            Administrator,
            SampleTime.Start
        );

    private static Outcome<SharedTablet> OfTheStore() =>
        SharedTablet.Register(
            "Tablet of the store",
            new string('1', 64),
            Administrator,
            SampleTime.Start
        );

    private static Actor Administrator { get; } =
        new(Guid.CreateVersion7(), "Ines Vidal", [Role.Administrator]);

    /// <summary>The visit of a signed-in person, the same for all tests; of nobody, when none is named.</summary>
    internal async Task<SiteVisit> VisitAsync(DemoPerson? person)
    {
        var name = person?.SignInName ?? "";
        if (!_visits.TryGetValue(name, out var visit))
        {
            _visits[name] = visit = new SiteVisit(Address);
            if (person is not null)
            {
                await visit.SignInAsync(name, DemoPeople.Password);
            }
        }

        return visit;
    }

    public async Task<T> ReadAsync<T>(Func<WeldTraceDbContext, Task<T>> read)
    {
        ArgumentNullException.ThrowIfNull(read);
        await using var db = await Services
            .GetRequiredService<IDbContextFactory<WeldTraceDbContext>>()
            .CreateDbContextAsync();
        return await read(db);
    }

    /// <summary>How many entries the ledger has: one more for each act that changed a record.</summary>
    public Task<long> LedgerSizeAsync() => ReadAsync(db => db.LedgerEntries.LongCountAsync());

    public override async ValueTask DisposeAsync()
    {
        foreach (var visit in _visits.Values)
        {
            visit.Dispose();
        }

        await base.DisposeAsync();
        _folder.Dispose();
        GC.SuppressFinalize(this);
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("Database:Folder", _folder.Path);
        builder.UseSetting("Demo", "true");
        // As behind a proxy that sets X-Forwarded-Proto itself.
        builder.UseSetting("ForwardedHeaders_Enabled", "true");
        builder.UseSetting("Logging:LogLevel:Default", "Warning");
        builder.ConfigureLogging(logging =>
            logging.AddProvider(Log).AddFilter<KeptLog>("WeldTrace", LogLevel.Information)
        );
        builder.UseEnvironment("Testing");
        builder.UseStaticWebAssets();
        builder.ConfigureTestServices(services =>
            services.AddScoped(provider =>
                IsSigningBroken
                    ? throw new InvalidOperationException("Signing fails on purpose.")
                    : ActivatorUtilities.CreateInstance<CheckpointHandler>(provider)
            )
        );
    }
}
