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
    /// <param name="runId">Run.</param>
    /// <param name="units">Units of the site.</param>
    /// <param name="fromSeconds">Start of the stretch drawn, as logged; null means the whole run.</param>
    /// <param name="toSeconds">End of the stretch drawn, as logged; null means the whole run.</param>
    /// <param name="cancellation">Ends the loading.</param>
    public async Task<byte[]?> FindAsync(
        Guid runId,
        UnitSystem units,
        double? fromSeconds,
        double? toSeconds,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var log = await db.FindLogWindowAsync(
            runId,
            header => ChartChannels.Of(header, units).Select(c => c.Column.Ordinal),
            fromSeconds,
            toSeconds,
            Buckets,
            cancellation
        );
        return log is null
            ? null
            : Write(
                log,
                ChartChannels.Of(log.Header, units),
                fromSeconds ?? double.NegativeInfinity,
                toSeconds ?? double.PositiveInfinity
            );
    }

    private static byte[] Write(
        ProcessLog log,
        IReadOnlyList<ChartChannel> channels,
        double from,
        double to
    )
    {
        var time = log.Header.Columns.First(c => c.Channel == LogChannel.Time);
        var drawn = LogChart.Envelopes(
            log,
            [time, .. channels.Select(c => c.Column)],
            from,
            to,
            Buckets
        );
        return ChartColumns.Write(
            [.. drawn[0].SelectMany(b => Pair(b.FromSeconds, (b.FromSeconds + b.ToSeconds) / 2))],
            [.. channels.Select((channel, i) => Column(channel, drawn[i + 1]))]
        );
    }

    private static double[] Column(ChartChannel channel, IReadOnlyList<ChartBucket> buckets) =>
        [
            .. buckets.SelectMany(b =>
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
                double? from,
                double? to,
                RunSamplesReader samples,
                SiteReader sites,
                HttpResponse response,
                CancellationToken cancellation
            ) =>
            {
                var site = await sites.GetAsync(cancellation);
                var bytes = await samples.FindAsync(id, site.Units, from, to, cancellation);
                response.Headers.CacheControl = "private, no-cache";
                return bytes is null
                    ? Results.NotFound()
                    : Results.Bytes(bytes, ChartColumns.ContentType);
            }
        );
}
