using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.Components.Charts;
using WeldTrace.Web.LogJudging;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Welding.ShowRun;

/// <summary>The samples of a run's log, thinned for its chart: of each bucket the least and the greatest.</summary>
public sealed class RunSamplesReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    private const int Buckets = 1000;

    /// <summary>The bytes that the chart reads; null when the run has no log.</summary>
    public async Task<byte[]?> FindAsync(
        Guid runId,
        UnitSystem units,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.FindLogHeaderAsync(runId, cancellation) is not { } header)
        {
            return null;
        }

        // The kept levels are fine enough for a long log; its samples need not be fetched.
        var levels = await db.LoadLogLevelsAsync(runId, cancellation);
        var isShort = header.SampleCount < (long)Buckets * levels.Min(l => l.SamplesPerBucket);
        var chunks = isShort ? await db.LoadLogChunksAsync(runId, cancellation) : [];
        return Write(new ProcessLog(header, chunks, levels), ChartChannels.Of(header, units));
    }

    private static byte[] Write(ProcessLog log, IReadOnlyList<ChartChannel> channels)
    {
        var time = log.Header.Columns.First(c => c.Channel == LogChannel.Time);
        var times = LogChart.Envelope(log, time, Buckets);
        return ChartColumns.Write(
            [.. times.SelectMany(b => Pair(b.FromSeconds, (b.FromSeconds + b.ToSeconds) / 2))],
            [.. channels.Select(channel => Column(log, channel))]
        );
    }

    private static double[] Column(ProcessLog log, ChartChannel channel) =>
        [
            .. LogChart
                .Envelope(log, channel.Column, Buckets)
                .SelectMany(b =>
                    Pair(channel.Unit.FromSi(b.MinimumSi), channel.Unit.FromSi(b.MaximumSi))
                ),
        ];

    private static double[] Pair(double first, double second) => [first, second];
}

public static class RunSamplesEndpoint
{
    public static void MapRunSamples(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/runs/{id:guid}/samples",
            async (
                Guid id,
                RunSamplesReader samples,
                SiteReader sites,
                HttpResponse response,
                CancellationToken cancellation
            ) =>
            {
                var site = await sites.GetAsync(cancellation);
                var bytes = await samples.FindAsync(id, site.Units, cancellation);
                response.Headers.CacheControl = "private, no-cache";
                return bytes is null
                    ? Results.NotFound()
                    : Results.Bytes(bytes, ChartColumns.ContentType);
            }
        );
}
