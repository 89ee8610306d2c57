using System.Diagnostics;
using System.Security.Cryptography;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.ProcessLogs;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Logs;

namespace WeldTrace.Benchmarks.Logs;

/// <summary>Speed and memory of the intake of process logs as ratios to references that are measured in the same run.</summary>
internal sealed class LogRatios(string file, SiteDatabase database)
{
    private const int Turns = 7;
    private const string Pandas =
        "import sys, time, pandas; t = time.perf_counter(); pandas.read_csv(sys.argv[1]); print(1000 * (time.perf_counter() - t))";

    private readonly List<Ratio> _ratios = [];
    private Guid _last;

    public static async Task<int> RunAsync()
    {
        var file = Path.Combine(Path.GetTempPath(), "weld-reference-log.csv");
        await using (var stream = File.Create(file))
        {
            new ReferenceLog().WriteCsv(stream);
        }

        await using var server = new PostgresServerFixture();
        await server.InitializeAsync();
        await using var database = await SiteDatabase.CreateAsync(server);
        try
        {
            var ratios = await new LogRatios(file, database).MeasureAsync();
            Console.WriteLine("| what | measured | reference | ratio | bar | |");
            Console.WriteLine("| --- | --- | --- | --- | --- | --- |");
            ratios.ToList().ForEach(ratio => Console.WriteLine(ratio.ToRow()));
            return ratios.All(ratio => ratio.Holds) ? 0 : 1;
        }
        finally
        {
            File.Delete(file);
        }
    }

    private async Task<IReadOnlyList<Ratio>> MeasureAsync()
    {
        var length = new FileInfo(file).Length;
        await IntakeAsync();
        var hash = await Stopwatches.QuickestAsync(Turns, Hash);
        var intake = await Stopwatches.QuickestAsync(Turns, IntakeAsync);
        Add(Ratio.OfTimes("whole durable intake", intake, "SHA-256 of the file", hash, 8));
        var before = GC.GetTotalAllocatedBytes(precise: true);
        await IntakeAsync();
        var allocated = GC.GetTotalAllocatedBytes(precise: true) - before;
        Add(
            new(
                "allocated by an intake",
                Ratio.Text(allocated / 1e6) + " MB",
                $"the file: {Ratio.Text(length / 1e6)} MB",
                (double)allocated / length,
                0.3
            )
        );
        var peak = Process.GetCurrentProcess().PeakWorkingSet64 / 1e6;
        Add(new("peak memory of the process", Ratio.Text(peak) + " MB", "", peak, 400));
        var log = await ReadAsync();
        var read = await Stopwatches.QuickestAsync(Turns, ReadAsync);
        Console.WriteLine($"of which read: {read:F0} ms");
        Add(
            new(
                "the file comes back byte for byte",
                log.Header.CsvIsOriginal ? "yes" : "no",
                "SHA-256",
                log.Header.CsvIsOriginal ? 1 : 2,
                1
            )
        );
        await PandasAsync(intake);
        await DuckDbAsync(intake);
        await StoredAsync(log);
        await JudgeAsync(log);
        await new ReadRatios(database, _last, log).MeasureAsync(Add);
        return _ratios;
    }

    private void Add(Ratio ratio)
    {
        Console.WriteLine(ratio.ToRow());
        _ratios.Add(ratio);
    }

    private void Hash()
    {
        using var stream = File.OpenRead(file);
        SHA256.HashData(stream);
    }

    /// <summary>Against pandas merely reading the file; pandas comes with <c>apt-get install python3-pandas</c>.</summary>
    private async Task PandasAsync(double intake)
    {
        var start = new ProcessStartInfo("/usr/bin/python3", ["-c", Pandas, file])
        {
            RedirectStandardOutput = true,
        };
        using var python = Process.Start(start)!;
        var told = await python.StandardOutput.ReadToEndAsync();
        await python.WaitForExitAsync();
        if (
            double.TryParse(
                told,
                System.Globalization.CultureInfo.InvariantCulture,
                out var milliseconds
            )
        )
        {
            Add(
                Ratio.OfTimes(
                    "whole durable intake",
                    intake,
                    "pandas reading it",
                    milliseconds,
                    0.5
                )
            );
        }
        else
        {
            Console.WriteLine("pandas is not there: apt-get install python3-pandas");
        }
    }

    private async Task DuckDbAsync(double intake)
    {
        var stretches = 0;
        var taken = await Stopwatches.QuickestAsync(3, () => stretches = DuckDbIntake.Take(file));
        Console.WriteLine($"stretches outside their windows by DuckDB: {stretches}");
        Add(
            Ratio.OfTimes(
                "whole durable intake",
                intake,
                "DuckDB reading, judging and storing it",
                taken,
                1
            )
        );
    }

    private async Task<ProcessLog> ReadAsync()
    {
        await using var stream = new FileStream(
            file,
            new FileStreamOptions { BufferSize = 0, Options = FileOptions.SequentialScan }
        );
        var read = await ProcessLogReader.ReadAsync(stream, ReferenceLog.Mapping);
        return read.Log ?? throw new InvalidOperationException(read.Problems[0].Sentence);
    }

    private async Task IntakeAsync()
    {
        var log = await ReadAsync();
        LogEvaluation.Evaluate(log, Plan);
        await using var db = database.CreateDbContext();
        _last = Guid.CreateVersion7();
        db.AddProcessLog(_last, log, null);
        await db.SaveChangesAsync();
    }

    private async Task StoredAsync(ProcessLog log)
    {
        var bytes = await database.StoredBytesOfALogAsync();
        var floor = EntropyFloor.Bytes(log);
        Add(
            new(
                "stored bytes, all tables and indexes",
                Ratio.Text(bytes / 1e6) + " MB",
                $"entropy of the samples: {Ratio.Text(floor / 1e6)} MB",
                bytes / floor,
                1.8
            )
        );
    }

    private async Task JudgeAsync(ProcessLog log)
    {
        int[][] codes = [.. log.Header.Columns.Skip(1).Select(c => EntropyFloor.Codes(log, c))];
        var most = 0;
        var max = await Stopwatches.QuickestAsync(
            9,
            () =>
                most = codes.Max(column =>
                    System.Numerics.Tensors.TensorPrimitives.Max<int>(column)
                )
        );
        var unpacked = new AllUnpacked(log);
        var judge = await Stopwatches.QuickestAsync(
            Turns,
            () => LogEvaluation.Evaluate(log, Plan, unpacked)
        );
        Add(Ratio.OfTimes("judging, on one thread", judge, "one maximum", max, 15));
        var both = await Stopwatches.QuickestAsync(Turns, () => LogEvaluation.Evaluate(log, Plan));
        Console.WriteLine($"judging with unpacking: {both:F0} ms");
        Debug.Assert(most > 0);
    }

    private static EvaluationPlan Plan { get; } =
        new()
        {
            ProgrammedSpeed = Speed.FromMillimetresPerMinute(200),
            Windows =
            [
                new(LogChannel.AxialForce, 8_500, 10_500, "N"),
                new(LogChannel.Torque, 30, 45, "N.m"),
                new(LogChannel.SpindleSpeed, 13, 14, "1/s"),
                new(LogChannel.TravelSpeed, 0.003, 0.0036, "m/s"),
                new(LogChannel.ToolTemperature, 300, 800, "K"),
            ],
        };
}
