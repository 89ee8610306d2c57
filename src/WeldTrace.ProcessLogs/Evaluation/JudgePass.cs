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
    private readonly PhaseLengths _lengths = new();
    private readonly ColumnStatistics[] _statistics;
    private readonly WindowJudge[] _judges;
    private readonly SeamTrace _trace;
    private readonly SpindleEnergyMeter _energy;
    private readonly ClosureMeter? _closure;
    private readonly SignatureMeter[] _signatures;
    private readonly double _round;
    private readonly SeamPoints _points;
    private readonly LogObserver _observer;
    private readonly List<FramePiece> _pieces = [];
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
            DebounceLength = plan.DebounceLength,
            MergeGap = plan.MergeGap,
        };
        _judges =
        [
            .. plan
                .Windows.Select(window =>
                    (window, column: RunChannels.Find(log.Header, window.Channel))
                )
                .Where(pair => pair.column is not null)
                .Select(pair => new WindowJudge(
                    pair.column!,
                    pair.window,
                    rule,
                    plan.Filters.GetValueOrDefault(pair.window.Channel)
                )),
        ];
        _trace = new SeamTrace(channels, channels.Position(plan));
        _energy = new SpindleEnergyMeter(log.Header);
        _closure = ClosureMeter.Of(log.Header, plan, channels);
        _signatures = [.. Signatures(log.Header, phases, plan)];
        _round = plan.Track?.Circumference.Metres ?? double.PositiveInfinity;
        _points = new SeamPoints(log.Header.SampleCount);
        _observer = new LogObserver(log, channels.Time);
    }

    public IReadOnlyList<SeamPoint> Points => _points.Complete();

    public IReadOnlyList<LogObservation> Observations => _observer.Complete();

    public PathClosure? Closure => _closure?.Complete(Travelled);

    /// <summary>When the seam was welded once round.</summary>
    public double? OverlapSeconds { get; private set; }

    public Length Travelled => _trace.Travelled;

    public IEnumerable<PhaseStatistics> Statistics =>
        _statistics.SelectMany(column => column.Complete());

    public IEnumerable<ChannelSignature> Signatures(double? turnsPerSecond) =>
        _signatures.Select(meter => meter.Complete(turnsPerSecond)).OfType<ChannelSignature>();

    public Energy? SpindleEnergy => _energy.Total;

    /// <summary>Figures of each phase that there was, in its order.</summary>
    public IEnumerable<PhaseFigures> PhaseFigures =>
        Enum.GetValues<TradePhase>()
            .Select(phase => new PhaseFigures(
                phase,
                _lengths.SecondsOf(phase),
                _lengths.PathOf(phase),
                _energy.Of(phase),
                [.. _statistics.Select(column => column.Of(phase)).OfType<PhaseStatistics>()]
            ))
            .Where(found => found.Columns.Count > 0);

    public IEnumerable<SteadyStretch> Steady => _steady.Select(stretch => stretch.Describe());

    public IEnumerable<ChannelExcursion> Excursions(CircularTrack? track) =>
        _judges
            .SelectMany(judge => judge.Complete(track))
            .OrderBy(excursion => excursion.StartSeconds);

    public void Run(ISampleSource samples)
    {
        var frames = new LogFrames(_log, samples);
        while (frames.MoveNext())
        {
            ReadOnlySpan<double> seconds = frames.Si(_channels.Time, ref _seconds);
            FramePiece.Divide(frames, seconds, _phases.Spans, _steady, _pieces);
            var metres = _trace.Follow(frames, seconds, _pieces);
            _points.Add(frames.First, seconds, metres);
            FollowOverlap(seconds, metres);
            _observer.Add(frames, seconds, _pieces);
            _energy.Add(frames, seconds, _pieces);
            _closure?.Add(frames, seconds, _pieces);
            foreach (var meter in _signatures)
            {
                meter.Add(frames, seconds);
            }

            foreach (var piece in _pieces)
            {
                Judge(frames, piece, seconds, metres);
            }
        }
    }

    private void FollowOverlap(ReadOnlySpan<double> seconds, ReadOnlySpan<double> metres)
    {
        if (OverlapSeconds is not null)
        {
            FramePiece.MarkOverlap(_pieces, 0);
        }
        else if (metres[^1] >= _round)
        {
            var at = metres.BinarySearch(_round);
            at = at < 0 ? ~at : at;
            OverlapSeconds = seconds[at];
            FramePiece.MarkOverlap(_pieces, at);
        }
    }

    private void Judge(
        LogFrames frames,
        FramePiece piece,
        ReadOnlySpan<double> seconds,
        ReadOnlySpan<double> metres
    )
    {
        var rows = piece.From..piece.To;
        _lengths.Add(piece, seconds, metres);
        piece.Steady?.Follow(metres[piece.From], metres[piece.To - 1]);
        foreach (var column in _statistics)
        {
            if (piece.Phase != WeldPhase.Idle)
            {
                column.Add(frames, piece);
            }
        }

        foreach (var judge in _judges)
        {
            if (judge.Concerns(piece))
            {
                judge.Add(frames, rows, seconds, metres);
            }
            else
            {
                judge.Interrupt();
            }
        }
    }

    private static IEnumerable<SignatureMeter> Signatures(
        LogHeader header,
        RunPhases phases,
        EvaluationPlan plan
    )
    {
        if (!phases.HasTraverse)
        {
            return [];
        }

        var (from, to) = phases
            .Passes.Where(pass => pass.HasTraverse)
            .Select(pass => pass.SteadyTraverse(plan.Thresholds.LongestRamp))
            .MaxBy(time => time.ToSeconds - time.FromSeconds);
        LogChannel[] looked = [LogChannel.AxialForce, LogChannel.TraverseForce, LogChannel.Torque];
        return looked
            .Select(channel => RunChannels.Find(header, channel))
            .OfType<LogColumn>()
            .Select(column => new SignatureMeter(column, header, from, to));
    }
}
