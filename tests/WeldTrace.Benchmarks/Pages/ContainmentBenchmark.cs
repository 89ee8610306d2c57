using BenchmarkDotNet.Attributes;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Domain.Findings;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Persistence.Roles;

namespace WeldTrace.Benchmarks.Pages;

/// <summary>Which of 100,000 vessels share anything with one, in the four weeks around its weld. Limit: less than 100 ms.</summary>
public class ContainmentBenchmark
{
    private const int Vessels = 100_000;
    private static readonly DateTimeOffset From = new(2023, 6, 20, 0, 0, 0, TimeSpan.Zero);
    private DemoSite _site = null!;
    private Guid _vessel;

    [GlobalSetup]
    public async Task SetupAsync()
    {
        _site = DemoSite.Start();
        using var client = _site.CreateClient();
        await ManyVessels.AddAsync(
            _site.Services.GetRequiredService<IDatabaseConnections>().Current.Owner,
            Vessels
        );
        _vessel = await AskAsync(db =>
            db.Vessels.Where(v => v.Serial == ManyVessels.Middle).Select(v => v.Id).SingleAsync()
        );
        if (await EverythingAsync() < 500)
        {
            throw new InvalidOperationException("The search finds too little to be measured.");
        }
    }

    [GlobalCleanup]
    public async Task CleanupAsync() => await _site.DisposeAsync();

    /// <summary>Tool, material and instruments: what a page shows at first, counted and its first 50 rows.</summary>
    [Benchmark]
    public Task<int> UsualAsync() =>
        SearchAsync([SharedThing.Tool, SharedThing.MaterialLot, SharedThing.Instrument]);

    /// <summary>All six.</summary>
    [Benchmark]
    public Task<int> EverythingAsync() => SearchAsync(Enum.GetValues<SharedThing>());

    private Task<int> SearchAsync(IReadOnlyCollection<SharedThing> shared) =>
        AskAsync(async db =>
        {
            var found = db.SharingWith(_vessel, shared, From, From.AddDays(28));
            var rows = await found.OrderBy(v => v.Serial).Take(50).ToListAsync();
            return (int)rows[0].Total;
        });

    private async Task<T> AskAsync<T>(Func<WeldTraceDbContext, Task<T>> ask)
    {
        await using var scope = _site.Services.CreateAsyncScope();
        var contexts = scope.ServiceProvider.GetRequiredService<
            IDbContextFactory<WeldTraceDbContext>
        >();
        await using var db = await contexts.CreateDbContextAsync();
        return await ask(db);
    }
}
