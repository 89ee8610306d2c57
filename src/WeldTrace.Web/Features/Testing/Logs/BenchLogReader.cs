using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Archives;
using WeldTrace.Persistence.Attachments;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Web.Features.Testing.Logs;

/// <summary>A logger file with its samples and its original bytes.</summary>
public sealed record BroughtLog(PressureTrace Trace, LoggerFile File, Attachment Attachment);

/// <summary>Reads the CSV file of a bench logger, as it is brought and again for drawing.</summary>
public static class BenchLogReader
{
    /// <summary>Largest request that a form with a logger file and photographs may send.</summary>
    public const long MostRequestBytes = PressureLog.MostBytes * 4;

    /// <summary>Samples drawn at most, however many there are.</summary>
    public const int DrawnSamples = 600;

    private const int LongestName = 120;
    private const string MediaType = "text/csv";

    /// <summary>The file of a form, or why it can't be taken.</summary>
    public static async Task<Outcome<BroughtLog>> ReadAsync(
        IFormFile file,
        string field,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(file);
        using var memory = new MemoryStream();
        if (file.Length <= PressureLog.MostBytes)
        {
            await using var stream = file.OpenReadStream();
            await stream.CopyToAsync(memory, cancellation);
        }
        else
        {
            return new Refusal(
                "log",
                FormattableString.Invariant(
                    $"The log has {file.Length / 1048576.0:0.#} MB; at most {PressureLog.MostBytes / 1048576} MB are taken. Log at a lower rate, or bring one file for each stage."
                ),
                field
            );
        }

        memory.Position = 0;
        var read = await PressureLog.ReadAsync(memory, cancellation);
        if (read.Trace is not { } trace)
        {
            return read
                .Problems.Select(p => new Refusal("log", $"{p.Sentence} {p.Remedy}", field))
                .ToList();
        }

        var bytes = memory.ToArray();
        return new BroughtLog(
            trace,
            new LoggerFile(
                read.Sha256,
                NameOf(file.FileName),
                trace.Samples.Count,
                trace.Samples[^1].Time.TotalSeconds
            ),
            new Attachment
            {
                Sha256 = read.Sha256,
                MediaType = MediaType,
                Length = bytes.LongLength,
                Bytes = bytes,
            }
        );
    }

    /// <summary>The logged samples of each stage of a test that has a logger file, thinned for drawing.</summary>
    public static async Task<IReadOnlyDictionary<int, IReadOnlyList<TraceSample>>> TracesAsync(
        this WeldTraceDbContext db,
        PressureTest? test,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        Dictionary<int, IReadOnlyList<TraceSample>> traces = [];
        foreach (var (stage, index) in (test?.Stages ?? []).Select((s, i) => (s, i)))
        {
            if (stage.Reading.Log is { } log && await db.TraceAsync(log, cancellation) is { } trace)
            {
                traces[index] = trace.Reduce(DrawnSamples);
            }
        }

        return traces;
    }

    /// <summary>The samples of a kept logger file; null when it no longer reads.</summary>
    public static async Task<PressureTrace?> TraceAsync(
        this WeldTraceDbContext db,
        LoggerFile log,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(log);
        if (await db.FindAttachmentAsync(log.Sha256, cancellation) is not { } kept)
        {
            return null;
        }

        using var stream = new MemoryStream(kept.Bytes);
        return (await PressureLog.ReadAsync(stream, cancellation)).Trace;
    }

    private static string NameOf(string fileName)
    {
        var name = fileName.Split('/', '\\')[^1];
        var plain = new string([.. name.Where(c => !char.IsControl(c))]).Trim();
        return plain.Length is 0 or > LongestName ? "logger file" : plain;
    }
}
