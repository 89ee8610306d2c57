using BenchmarkDotNet.Attributes;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence.Loading;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Benchmarks.Gate;

/// <summary>
/// The gate before a run, loaded from the database in one round trip and judged, among 100,000 vessels and five years of 20,000 runs each.
/// Limit: 20 ms.
/// </summary>
public class GateBenchmark
{
    private const int Step = 20;
    private FilledShop _filled = null!;
    private WeldChoice _choice = null!;

    [GlobalSetup]
    public async Task SetupAsync()
    {
        _filled = await FilledShop.OpenAsync();
        await using (var db = _filled.Open())
        {
            if (
                await db.Vessels.CountAsync() <= FilledShop.Vessels
                || await db.WeldRuns.CountAsync() <= FilledShop.Vessels
            )
            {
                throw new InvalidOperationException("The database is not as full as it should be.");
            }
        }

        var shop = _filled.Shop;
        _choice = new(shop.Tool.Mark, shop.Machine.Name, SamplePeople.Operator, shop.Now);
        if ((await JudgeAsync()).Count != 10)
        {
            throw new InvalidOperationException(
                "The gate did not judge its nine rules and the production tests."
            );
        }
    }

    [GlobalCleanup]
    public async Task CleanupAsync() => await _filled.DisposeAsync();

    [Benchmark]
    public async Task<IReadOnlyList<RuleVerdict>> JudgeAsync()
    {
        await using var db = _filled.Open();
        var facts = await db.FindWeldGateFactsAsync(
            _filled.Shop.Vessel.Serial,
            Step,
            _choice,
            CancellationToken.None
        );
        return WeldGate.Judge(facts!);
    }
}
