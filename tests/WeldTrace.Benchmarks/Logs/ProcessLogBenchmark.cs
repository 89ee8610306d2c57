using BenchmarkDotNet.Attributes;
using WeldTrace.Engineering.Signals;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.ProcessLogs;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Demo;

namespace WeldTrace.Benchmarks.Logs;

/// <summary>A log of 12 columns and 240,000 rows. Limit: parsed, judged and stored in less than 1 s.</summary>
public class ProcessLogBenchmark
{
    private const int Rows = 240_000;
    private PostgresServerFixture _server = null!;
    private SiteDatabase _database = null!;
    private byte[] _file = [];
    private LogMapping _mapping = null!;
    private ProcessLog _log = null!;
    private EvaluationPlan _plan = null!;

    [GlobalSetup]
    public async Task SetupAsync()
    {
        _server = await StartServerAsync();
        _database = await SiteDatabase.CreateAsync(_server);
        var run = new DemoRun();
        _file = Csv(run);
        using var stream = new MemoryStream(_file);
        _mapping = (await LogPreview.ReadAsync(stream)).Preview!.Guess;
        _log = await ParseAsync();
        _plan = Plan(run);
    }

    [GlobalCleanup]
    public async Task CleanupAsync()
    {
        await _database.DisposeAsync();
        await _server.DisposeAsync();
    }

    [Benchmark]
    public async Task<ProcessLog> ParseAsync()
    {
        using var stream = new MemoryStream(_file);
        return (await ProcessLogReader.ReadAsync(stream, _mapping)).Log!;
    }

    [Benchmark]
    public LogEvaluation Judge() => LogEvaluation.Evaluate(_log, _plan);

    [Benchmark]
    public Task StoreAsync() => StoreAsync(_log);

    [Benchmark(Baseline = true)]
    public async Task<LogEvaluation> ParseJudgeAndStoreAsync()
    {
        var log = await ParseAsync();
        var judged = LogEvaluation.Evaluate(log, _plan);
        await StoreAsync(log);
        return judged;
    }

    private static async Task<PostgresServerFixture> StartServerAsync()
    {
        var server = new PostgresServerFixture();
        await server.InitializeAsync();
        return server;
    }

    private async Task StoreAsync(ProcessLog log)
    {
        await using var db = _database.CreateDbContext();
        db.AddProcessLog(Guid.CreateVersion7(), log, null);
        await db.SaveChangesAsync();
    }

    /// <summary>The invented run, sampled as often as it takes, and cut at the wanted number of rows.</summary>
    private static byte[] Csv(DemoRun run)
    {
        var rate = run.SamplesPerSecond;
        var seconds = (double)new DemoLog(run).SampleCount / rate;
        var fast = new DemoLog(run with { SamplesPerSecond = (int)Math.Ceiling(Rows / seconds) });
        var lines = fast.ToCsv().Split('\n');
        return System.Text.Encoding.UTF8.GetBytes(string.Join('\n', lines.Take(Rows + 1)) + "\n");
    }

    private static EvaluationPlan Plan(DemoRun run) =>
        new()
        {
            PlannedPath = (run.TrackRadius * (2 * Math.PI)) + run.Overlap,
            ProgrammedSpeed = run.TravelSpeed,
            Track = new CircularTrack(run.TrackRadius, run.Start, run.Travel),
            PlannedOverlap = run.Overlap,
            Debounce = TimeSpan.FromSeconds(0.5),
            Windows = [],
        };
}
