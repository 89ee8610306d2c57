using BenchmarkDotNet.Attributes;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Persistence;

namespace WeldTrace.Benchmarks.Pages;

/// <summary>
/// Whole requests, signed in, on the database. Limits: the page of a vessel with 40 records in less than 30 ms, its traveler in
/// less than 300 ms.
/// </summary>
public class VesselBenchmark
{
    private const string Serial = "NR10-0001";
    private const int LeastRecords = 40;
    private DemoSite _site = null!;
    private HttpClient _auditor = null!;

    [GlobalSetup]
    public async Task SetupAsync()
    {
        _site = DemoSite.Start();
        _auditor = await _site.SignInAsync();
        await using var scope = _site.Services.CreateAsyncScope();
        var contexts = scope.ServiceProvider.GetRequiredService<
            IDbContextFactory<WeldTraceDbContext>
        >();
        await using var db = await contexts.CreateDbContextAsync();
        var vessel = await db.Vessels.SingleAsync(v => v.Serial == Serial);
        var records =
            await db.WeldRuns.CountAsync(r => r.VesselId == vessel.Id)
            + await db.LeakTests.CountAsync(t => t.VesselId == vessel.Id)
            + await db.PressureTests.CountAsync(t => t.VesselId == vessel.Id)
            + await db.Sections.CountAsync(t => t.VesselId == vessel.Id)
            + await db.Findings.CountAsync(f => f.VesselId == vessel.Id)
            + await db.JointCleanings.CountAsync(c => c.VesselId == vessel.Id)
            + await db.JointFitUps.CountAsync(c => c.VesselId == vessel.Id)
            + await db.StepSignOffs.CountAsync(s => s.VesselId == vessel.Id)
            + (await db.Signatures.ToListAsync()).Count(s => s.Vessels.Contains(vessel.Id))
            + vessel.Components.Count
            + vessel.Steps.Count;
        if (records < LeastRecords)
        {
            throw new InvalidOperationException($"{Serial} has {records} records only.");
        }
    }

    [GlobalCleanup]
    public async Task CleanupAsync()
    {
        _auditor.Dispose();
        await _site.DisposeAsync();
    }

    [Benchmark]
    public Task<string> PageAsync() => ReadAsync($"/vessels/{Serial}");

    [Benchmark]
    public Task<string> TravelerAsync() => ReadAsync($"/vessels/{Serial}/traveler.pdf");

    private Task<string> ReadAsync(string path) =>
        _auditor.GetStringAsync(new Uri(path, UriKind.Relative));
}
