using BenchmarkDotNet.Attributes;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Domain.Findings;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Filling;

namespace WeldTrace.Benchmarks.Pages;

/// <summary>Which of 100,000 vessels share anything with one, in the four weeks around its weld. Limit: less than 100 ms.</summary>
public class ContainmentBenchmark
{
    private const int Vessels = 100_000;
    private const string Serial = "NR10-0001";

    // Photographs, logs and signatures are not looked at, and would take most of an hour to copy.
    private static readonly HashSet<string> Searched =
    [
        "weld_runs",
        "leak_tests",
        "pressure_tests",
        "sections",
        "joint_fit_ups",
    ];

    private DemoSite _site = null!;
    private Guid _vessel;
    private DateTimeOffset _from;

    [GlobalSetup]
    public async Task SetupAsync()
    {
        _site = DemoSite.Start();
        using var client = _site.CreateClient();
        var filling = new Filling(Serial, Vessels)
        {
            Shared = await AskAsync(SharedAsync),
            Tables = Searched,
        };
        await ManyVessels.AddAsync(
            _site.Services.GetRequiredService<IDatabaseConnections>().Current.Owner,
            filling
        );
        (_vessel, _from) = await AskAsync(async db =>
        {
            var serial = filling.SerialOf(Vessels / 2);
            var run = await db.WeldRuns.FirstAsync(r => r.VesselSerial == serial);
            return (run.VesselId, run.StartedAt.AddDays(-14));
        });
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

    // What the vessels of a shop have in common: a tool for 100 of them, a lot of material for 50, five machines, twenty welders.
    private static async Task<IReadOnlyList<SharedRecord>> SharedAsync(WeldTraceDbContext db)
    {
        var vessel = await db.Vessels.SingleAsync(v => v.Serial == Serial);
        var runs = await db.WeldRuns.Where(r => r.VesselId == vessel.Id).ToListAsync();
        var tests = await db.LeakTests.Where(t => t.VesselId == vessel.Id).ToListAsync();
        return
        [
            .. runs.Select(r => r.ToolId)
                .Distinct()
                .Select(id => SharedRecord.ChangesEvery(id, 100)),
            .. vessel
                .Components.Select(c => c.MaterialLotId)
                .Distinct()
                .Select(id => SharedRecord.ChangesEvery(id, 50)),
            .. runs.Select(r => r.ProcedureRevisionId)
                .Distinct()
                .Select(id => SharedRecord.ChangesEvery(id, 5000)),
            .. runs.Select(r => r.MachineId).Distinct().Select(id => SharedRecord.OneOf(id, 5)),
            .. runs.Select(r => r.OperatorId).Distinct().Select(id => SharedRecord.OneOf(id, 20)),
            .. tests
                .SelectMany(t => t.Instruments ?? [])
                .Select(i => i.Id)
                .Distinct()
                .Select(id => SharedRecord.OneOf(id, 40)),
        ];
    }

    private Task<int> SearchAsync(IReadOnlyCollection<SharedThing> shared) =>
        AskAsync(async db =>
        {
            var found = db.SharingWith(_vessel, shared, _from, _from.AddDays(28));
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
