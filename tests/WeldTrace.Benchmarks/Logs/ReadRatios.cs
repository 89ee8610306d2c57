using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.Persistence.RunFigures;
using WeldTrace.ProcessLogs;
using WeldTrace.TestSupport.Database;

namespace WeldTrace.Benchmarks.Logs;

/// <summary>What is read back from stored logs, against a round trip of <c>SELECT 1</c> and a copy in memory.</summary>
internal sealed class ReadRatios(SiteDatabase database, Guid runId, ProcessLog log)
{
    private const int Turns = 15;
    private const int Buckets = 1000;
    private const int ChunksTogether = 16;
    private const int Runs = 20_000;
    private const int Revisions = 20;

    public async Task MeasureAsync(Action<Ratio> add)
    {
        var trip = await Stopwatches.QuickestAsync(200, SelectOneAsync);
        var chart = await Stopwatches.QuickestAsync(Turns, () => ChartAsync(null, null));
        add(Ratio.OfTimes("chart of 12 channels from stored levels", chart, "select 1", trip, 20));
        var window = await Stopwatches.QuickestAsync(Turns, () => ChartAsync(600, 605));
        add(Ratio.OfTimes("5 s of 12 channels", window, "select 1", trip, 40));
        var samples = new double[log.Header.SampleCount];
        var whole = await Stopwatches.QuickestAsync(Turns, () => ChannelAsync(samples));
        // Only now: memory that was never written is one page of zeros wherever it is read.
        var copy = new double[samples.Length];
        var copied = await Stopwatches.QuickestAsync(Turns, () => samples.CopyTo(copy, 0));
        add(Ratio.OfTimes("one channel whole", whole, "copy in memory", copied, 20));
        await FillAsync();
        var many = await Stopwatches.QuickestAsync(Turns, ManyRunsAsync);
        add(
            new(
                "one parameter of 1,000 runs among 20,000",
                Ratio.Text(many) + " ms",
                "10 ms",
                many,
                10
            )
        );
    }

    private async Task SelectOneAsync()
    {
        await using var db = database.CreateDbContext();
        await db.Database.ExecuteSqlRawAsync("SELECT 1");
    }

    private async Task ChartAsync(double? from, double? to)
    {
        await using var db = database.CreateDbContext();
        var found = await db.FindLogWindowAsync(
            runId,
            header => header.Columns.Select(c => c.Ordinal),
            from,
            to,
            Buckets,
            CancellationToken.None
        );
        LogChart.Envelopes(
            found!,
            found!.Header.Columns,
            from ?? double.NegativeInfinity,
            to ?? double.PositiveInfinity,
            Buckets
        );
    }

    // While the next chunks come from the database, those that are there are unpacked.
    private async Task ChannelAsync(double[] samples)
    {
        await using var db = database.CreateDbContext();
        var chunks = db
            .ProcessLogChunks.AsNoTracking()
            .Where(c => c.RunId == runId && c.Ordinal == 1)
            .OrderBy(c => c.Position)
            .Select(c => new { c.Count, c.Bytes })
            .AsAsyncEnumerable();
        List<Task> unpacking = [];
        List<byte[]> together = [];
        var (from, to) = (0, 0);
        await foreach (var chunk in chunks)
        {
            together.Add(chunk.Bytes);
            to += chunk.Count;
            if (together.Count == ChunksTogether || to == samples.Length)
            {
                var (packed, room) = (together, samples.AsMemory(from..to));
                unpacking.Add(Task.Run(() => Unpack(packed, room.Span)));
                (together, from) = ([], to);
            }
        }

        await Task.WhenAll(unpacking);
    }

    private static void Unpack(List<byte[]> chunks, Span<double> samples)
    {
        using var codec = new ChannelCodec();
        var block = new SampleBlock();
        foreach (var chunk in chunks)
        {
            codec.Decode(chunk, block);
            block.CopyValuesTo(samples);
            samples = samples[block.Count..];
        }
    }

    private async Task FillAsync()
    {
        await using var db = database.CreateDbContext();
        await db.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO run_figures
            SELECT gen_random_uuid(), p, now() - i * interval '1 minute', md5((i % {Revisions})::text)::uuid,
                md5('m')::uuid, md5('t')::uuid, md5('o')::uuid, 8000 + 100 * random(), 40, i
            FROM generate_series(1, {Runs}) i,
                unnest(ARRAY['AxialForce', 'Torque', 'SpindleSpeed', 'TravelSpeed', 'PlungeDepth', 'ToolTemperature']) p
            """
        );
        await db.Database.ExecuteSqlRawAsync("VACUUM ANALYZE run_figures");
    }

    private async Task ManyRunsAsync()
    {
        await using var db = database.CreateDbContext();
        var found = await db.FindRunFiguresAsync(
            RevisionOne,
            WeldParameter.AxialForce,
            new RunFigureFilter(null, null, null),
            1000,
            CancellationToken.None
        );
        if (found.Count != Runs / Revisions)
        {
            throw new InvalidOperationException($"{found.Count} runs were found.");
        }
    }

    // md5('1') as PostgreSQL reads it.
    private static Guid RevisionOne { get; } = Guid.Parse("c4ca4238a0b923820dcc509a6f75849b");
}
