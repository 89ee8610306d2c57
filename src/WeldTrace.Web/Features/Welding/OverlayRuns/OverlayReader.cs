using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Units;
using WeldTrace.Persistence;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.Components.Charts;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Features.Welding.OverlayRuns;

/// <summary>Which runs are laid over each other, in which parameter.</summary>
/// <param name="Parameter">Parameter.</param>
/// <param name="Runs">Runs in the order of asking; the first <see cref="MostRuns"/> count.</param>
public sealed record OverlayQuery(WeldParameter Parameter, IReadOnlyList<Guid> Runs)
{
    /// <summary>More lines than these can't be told apart.</summary>
    public const int MostRuns = 4;

    /// <summary>The query of an address that asks for it.</summary>
    public string Words =>
        $"?parameter={Parameter}{string.Concat(Runs.Select(r => $"&run={r:D}"))}";

    /// <summary>What an address asks for; what is no run is left out.</summary>
    public static OverlayQuery Read(string? parameter, IReadOnlyList<string?>? runs) =>
        new(
            Enum.TryParse<WeldParameter>(parameter, out var found)
            && WatchedChannels.Of(found) is not null
                ? found
                : WeldParameter.AxialForce,
            [
                .. (runs ?? [])
                    .Select(r => Guid.TryParse(r, out var id) ? id : Guid.Empty)
                    .Where(id => id != Guid.Empty)
                    .Distinct()
                    .Take(MostRuns),
            ]
        );
}

/// <summary>The runs of an overlay that have a log with the parameter.</summary>
/// <param name="Runs">Runs in the order of asking.</param>
/// <param name="Procedure">Procedure revision of the first, whose window is drawn; null without runs.</param>
public sealed record OverlayView(IReadOnlyList<WeldRun> Runs, ProcedureRevision? Procedure);

/// <summary>Loads runs to be laid over each other, and their samples along the seam.</summary>
public sealed class OverlayReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    // Finer than the stretches that are drawn, for time and seam are not in step everywhere.
    private const int Buckets = 4 * RunOverlay.Bins;

    public async Task<OverlayView> FindAsync(OverlayQuery query, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var runs = await RunsAsync(db, query, cancellation);
        var first = runs is [var one, ..] ? one.ProcedureRevisionId : Guid.Empty;
        return new OverlayView(
            runs,
            await db
                .ProcedureRevisions.AsNoTracking()
                .SingleOrDefaultAsync(p => p.Id == first, cancellation)
        );
    }

    /// <summary>The bytes that the chart reads; null when no run has such samples.</summary>
    /// <param name="query">Runs and parameter.</param>
    /// <param name="units">Units of the site.</param>
    /// <param name="from">Begin of the stretch drawn, in the site's unit of lengths; null means the start of the seam.</param>
    /// <param name="to">End of the stretch drawn; null means the end of the longest run.</param>
    /// <param name="cancellation">Ends the loading.</param>
    public async Task<byte[]?> SamplesAsync(
        OverlayQuery query,
        UnitSystem units,
        double? from,
        double? to,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var runs = await RunsAsync(db, query, cancellation);
        var along = SiteUnit.For<Length>(units);
        var end = runs.Count == 0 ? 0 : runs.Max(r => r.Log!.Places![^1].Metres);
        var (low, high) = (
            Math.Clamp(from is { } f ? along.ToSi(f) : 0, 0, end),
            Math.Clamp(to is { } t ? along.ToSi(t) : end, 0, end)
        );
        if (!(high > low))
        {
            return null;
        }

        List<OverlaidRun> laid = [];
        Unit? unit = null;
        foreach (var run in runs)
        {
            if (await TraceAsync(db, run, query, units, (low, high), cancellation) is { } trace)
            {
                unit = trace.Unit;
                laid.Add(trace.Run);
            }
        }

        if (unit is null)
        {
            return null;
        }

        var (axis, columns) = RunOverlay.Of(laid, low, high);
        return ChartColumns.Write(
            [.. axis.Select(along.FromSi)],
            [.. columns.Select(c => (IReadOnlyList<double>)[.. c.Select(unit.FromSi)])]
        );
    }

    private static async Task<(OverlaidRun Run, Unit Unit)?> TraceAsync(
        WeldTraceDbContext db,
        WeldRun run,
        OverlayQuery query,
        UnitSystem units,
        (double From, double To) seam,
        CancellationToken cancellation
    )
    {
        var places = run.Log!.Places!;
        var (from, to) = (SeamTime.TimeAt(places, seam.From), SeamTime.TimeAt(places, seam.To));
        var log = await db.FindLogWindowAsync(
            run.Id,
            header => Channel(header, query, units) is { } c ? [c.Column.Ordinal] : [],
            from,
            to,
            Buckets,
            cancellation
        );
        return log is not null && Channel(log.Header, query, units) is { } channel
            ? (
                new OverlaidRun(LogChart.Envelope(log, channel.Column, from, to, Buckets), places),
                channel.Unit
            )
            : null;
    }

    private static ChartChannel? Channel(LogHeader header, OverlayQuery query, UnitSystem units) =>
        ChartChannels
            .Of(header, units)
            .FirstOrDefault(c => c.Column.Channel == WatchedChannels.Of(query.Parameter));

    private static async Task<IReadOnlyList<WeldRun>> RunsAsync(
        WeldTraceDbContext db,
        OverlayQuery query,
        CancellationToken cancellation
    )
    {
        var runs = await db
            .WeldRuns.AsNoTracking()
            .Where(r => query.Runs.Contains(r.Id))
            .ToListAsync(cancellation);
        return
        [
            .. query
                .Runs.Select(id => runs.Find(r => r.Id == id))
                .OfType<WeldRun>()
                .Where(r =>
                    r.Log is { Places.Count: > 1 } log
                    && log.Parameters.Any(p => p.Parameter == query.Parameter)
                ),
        ];
    }
}
