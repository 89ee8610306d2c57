using System.Globalization;
using WeldTrace.Documents.Drawings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.ProcessLogs;
using LogChannel = WeldTrace.ProcessLogs.LogChannel;

namespace WeldTrace.Web.LogJudging;

/// <summary>Process logs as a printed chart draws them: of each bucket the least and the greatest.</summary>
public static class LogPlots
{
    private const int Buckets = 250;

    /// <summary>The charts of the runs that have a log; channels without a window are left out.</summary>
    public static async Task<IReadOnlyDictionary<Guid, ProcessLogPlot>> LoadLogPlotsAsync(
        this WeldTraceDbContext db,
        IEnumerable<WeldRun> runs,
        IReadOnlyDictionary<Guid, ProcedureRevision> procedures,
        UnitSystem units,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(runs);
        ArgumentNullException.ThrowIfNull(procedures);
        Dictionary<Guid, ProcessLogPlot> plots = [];
        foreach (var run in runs.Where(r => r.Log is not null))
        {
            if (
                procedures.TryGetValue(run.ProcedureRevisionId, out var procedure)
                && await FindAsync(db, run.Id, units, cancellation) is { } log
            )
            {
                plots[run.Id] = Plot(log, run.Log!, procedure.Content, units);
            }
        }

        return plots;
    }

    private static Task<ProcessLog?> FindAsync(
        WeldTraceDbContext db,
        Guid runId,
        UnitSystem units,
        CancellationToken cancellation
    ) =>
        db.FindLogWindowAsync(
            runId,
            header => ChartChannels.Of(header, units).Select(c => c.Column.Ordinal),
            null,
            null,
            Buckets,
            cancellation
        );

    private static ProcessLogPlot Plot(
        ProcessLog log,
        LogSummary summary,
        ProcedureContent procedure,
        UnitSystem units
    )
    {
        var time = log.Header.Columns.First(c => c.Channel == LogChannel.Time);
        return new ProcessLogPlot
        {
            TimesInSeconds =
            [
                .. LogChart
                    .Envelope(log, time, Buckets)
                    .SelectMany(b => Pair(b.FromSeconds, (b.FromSeconds + b.ToSeconds) / 2)),
            ],
            Channels =
            [
                .. ChartChannels
                    .Of(log.Header, units)
                    .Select(c => Channel(log, c, summary, procedure))
                    .OfType<Documents.Drawings.LogChannel>(),
            ],
            Phases =
            [
                .. summary.Phases.Select(p => new LogPhase(
                    p.Phase,
                    Seconds(p.StartSeconds),
                    Seconds(p.EndSeconds)
                )),
            ],
        };
    }

    private static Documents.Drawings.LogChannel? Channel(
        ProcessLog log,
        ChartChannel channel,
        LogSummary summary,
        ProcedureContent procedure
    )
    {
        var parameter = WatchedChannels.ParameterOf(channel.Column.Channel);
        if (parameter is null || procedure.WindowOf(parameter.Value) is not { } window)
        {
            return null;
        }

        var values = LogChart
            .Envelope(log, channel.Column, Buckets)
            .SelectMany(b =>
                Pair(channel.Unit.FromSi(b.MinimumSi), channel.Unit.FromSi(b.MaximumSi))
            );
        return new Documents.Drawings.LogChannel(
            ParameterNames.Of(window.Parameter),
            channel.Unit.Symbol,
            [.. values]
        )
        {
            Window = new Documents.Drawings.ChannelWindow(
                channel.Unit.FromSi(window.LowerSi),
                channel.Unit.FromSi(window.SetPointSi),
                channel.Unit.FromSi(window.UpperSi)
            ),
            Excursions =
            [
                .. summary
                    .Excursions.Select(
                        (e, i) =>
                            (Excursion: e, Number: (i + 1).ToString(CultureInfo.InvariantCulture))
                    )
                    .Where(e => e.Excursion.Parameter == window.Parameter)
                    .Select(e => new LogExcursion(
                        e.Number,
                        Seconds(e.Excursion.StartSeconds),
                        Seconds(e.Excursion.EndSeconds)
                    )),
            ],
        };
    }

    private static double[] Pair(double first, double second) => [first, second];

    private static TimeSpan Seconds(double value) => TimeSpan.FromSeconds(value);
}
