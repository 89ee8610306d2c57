using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>The second pass over a log: positions, statistics and excursions, once the phases are known.</summary>
internal sealed class JudgePass
{
    private readonly ProcessLog _log;
    private readonly RunChannels _channels;
    private readonly RunPhases _phases;
    private readonly SteadyTime[] _steady;
    private readonly ColumnStatistics[] _statistics;
    private readonly WindowJudge[] _judges;
    private readonly SeamTrace _trace;
    private readonly SpindleEnergyMeter _energy;
    private readonly SeamPoints _points;
    private readonly LogObserver _observer;
    private double[] _seconds = [];

    public JudgePass(ProcessLog log, EvaluationPlan plan, RunChannels channels, RunPhases phases)
    {
        (_log, _channels, _phases) = (log, channels, phases);
        _steady = SteadyTime.Of(phases, plan.Thresholds.LongestRamp);
        _statistics =
        [
            .. log
                .Header.Columns.Where(column => column.Channel != LogChannel.Time)
                .Select(column => new ColumnStatistics(column, log)),
        ];
        var rule = new ExcursionRule(TimeSpan.FromSeconds(log.Header.SamplePeriodSeconds))
        {
            Debounce = plan.Debounce,
            MergeGap = plan.MergeGap,
        };
        _judges =
        [
            .. plan
                .Windows.Select(window =>
                    (window, column: RunChannels.Find(log.Header, window.Channel))
                )
                .Where(pair => pair.column is not null)
                .Select(pair => new WindowJudge(pair.column!, pair.window, rule)),
        ];
        _trace = new SeamTrace(channels, phases, channels.Position(plan));
        _energy = new SpindleEnergyMeter(log.Header);
        _points = new SeamPoints(log.Header.SampleCount);
        _observer = new LogObserver(log, channels.Time, phases);
    }

    public IReadOnlyList<SeamPoint> Points => _points.Complete();

    public IReadOnlyList<LogObservation> Observations => _observer.Complete();

    public Length Travelled => _trace.Travelled;

    public IEnumerable<PhaseStatistics> Statistics =>
        _statistics.SelectMany(column => column.Complete());

    public Energy? SpindleEnergy => _energy.Total;

    public IEnumerable<SteadyStretch> Steady => _steady.Select(stretch => stretch.Describe());

    public IEnumerable<ChannelExcursion> Excursions(CircularTrack? track) =>
        _judges
            .SelectMany(judge => judge.Complete(track))
            .OrderBy(excursion => excursion.StartSeconds);

    public void Run()
    {
        using var frames = new LogFrames(_log, _log.Header.Columns);
        while (frames.MoveNext())
        {
            var seconds = Seconds(frames);
            var metres = _trace.Follow(frames, seconds);
            _points.Add(frames.First, seconds, metres);
            _observer.Add(frames, seconds);
            CountPhases(frames);
            foreach (var stretch in _steady)
            {
                Judge(frames, stretch, seconds, metres);
            }
        }
    }

    private ReadOnlySpan<double> Seconds(LogFrames frames)
    {
        _seconds = _seconds.Length < frames.Count ? new double[frames.Count] : _seconds;
        var seconds = _seconds.AsSpan(0, frames.Count);
        frames.CopySi(_channels.Time, seconds);
        return seconds;
    }

    private void CountPhases(LogFrames frames)
    {
        foreach (var span in _phases.Spans)
        {
            var from = (int)Math.Clamp(span.First.Index - frames.First, 0, frames.Count);
            var to = (int)Math.Clamp(span.Next.Index - frames.First, 0, frames.Count);
            if (to > from && span.Phase != WeldPhase.Idle)
            {
                foreach (var column in _statistics)
                {
                    column.Add(span.Phase, frames.Values(column.Column)[from..to]);
                }
            }
        }
    }

    private void Judge(
        LogFrames frames,
        SteadyTime stretch,
        ReadOnlySpan<double> seconds,
        ReadOnlySpan<double> metres
    )
    {
        var (from, to) = stretch.In(seconds);
        if (to <= from)
        {
            return;
        }

        stretch.Follow(metres[from], metres[to - 1]);
        foreach (var column in _statistics)
        {
            column.AddSteady(frames.Values(column.Column)[from..to]);
        }

        foreach (var judge in _judges)
        {
            judge.Add(seconds[from..to], frames.Values(judge.Column)[from..to], metres[from..to]);
            if (to < seconds.Length)
            {
                judge.Interrupt();
            }
        }

        _energy.Add(frames, seconds, from, to);
    }
}
