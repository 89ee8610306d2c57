namespace WeldTrace.Engineering.Signals;

/// <summary>
/// Tells the phases of a logged run apart, sample by sample, in constant memory. Rules: contact is the first
/// sample at the contact force; dwell starts at the first sample within the tolerance of the greatest depth
/// before travel; the traverse runs from the first to the last sample at travel speed; retract starts at the
/// first later sample that is shallower by more than the tolerance; free is the first later sample below the
/// contact force. Common practice, no published source.
/// </summary>
/// <param name="thresholds">Levels to judge by.</param>
public sealed class PhaseSegmentation(PhaseThresholds thresholds)
{
    private readonly double _contactNewtons = thresholds.ContactForce.Newtons;
    private readonly double _travelSpeed = thresholds.TraverseSpeed.MetresPerSecond;
    private readonly double? _steadySpeed = thresholds.SteadySpeed?.MetresPerSecond;
    private readonly double _toleranceMetres = thresholds.DepthTolerance.Metres;
    private readonly double _holdSeconds = thresholds.TravelHold.TotalSeconds;
    private readonly double _dwellSeconds = thresholds.ProgrammedDwell.TotalSeconds;
    private readonly DepthRecord _depth = new(thresholds.DepthTolerance.Metres);
    private readonly List<ToolPass> _passes = [];

    private long _index;
    private LogPoint _first;
    private LogPoint _last;
    private LogPoint? _contact;
    private LogPoint? _travelStart;
    private LogPoint? _travelEnd;
    private LogPoint? _steadyStart;
    private LogPoint? _steadyEnd;
    private LogPoint? _exitStart;
    private LogPoint? _retract;
    private double _depthAtTravelEnd;
    private bool _travelling;

    /// <summary>Takes the next sample.</summary>
    /// <param name="sample">The next sample in time.</param>
    public void Add(in ToolSample sample)
    {
        var point = new LogPoint(_index, sample.TimeSeconds);
        _first = _index++ == 0 ? point : _first;
        if (_contact is null && Touches(sample))
        {
            Begin(point);
        }

        if (_contact is not null)
        {
            Follow(sample, point);
        }

        _last = point;
    }

    /// <summary>
    /// Takes a batch of samples. While the tool is under way at its speed nothing but the end of that stretch matters, so such samples
    /// are passed over together.
    /// </summary>
    /// <param name="samples">The next samples in time; may be empty.</param>
    public void Add(in ToolSamples samples)
    {
        for (var next = 0; next < samples.Count; )
        {
            var underWay = UnderWay(samples.SpeedMetresPerSecond[next..]);
            if (underWay > 0)
            {
                var last = next + underWay - 1;
                PassOver(
                    underWay,
                    samples.TimeSeconds[next],
                    samples.TimeSeconds[last],
                    samples.DepthMetres[last]
                );
                next += underWay;
            }
            else
            {
                Add(samples[next++]);
            }
        }
    }

    /// <summary>Whether samples that all travel at least so fast, in m/s, change nothing but the end of the traverse under way. NaN: they may.</summary>
    public bool IsUnderWayAt(double leastMetresPerSecond) =>
        _contact is not null && _travelling && leastMetresPerSecond >= UnderWaySpeed;

    /// <summary>Takes a batch of samples of which <see cref="IsUnderWayAt"/> is true, without looking at each of them.</summary>
    /// <param name="count">One or more.</param>
    /// <param name="firstSeconds">Time stamp of the first, in s.</param>
    /// <param name="lastSeconds">Time stamp of the last, in s.</param>
    /// <param name="lastDepthMetres">Depth at the last, in m; NaN when it is not logged.</param>
    public void PassOver(int count, double firstSeconds, double lastSeconds, double lastDepthMetres)
    {
        var point = new LogPoint(_index, firstSeconds);
        var last = new LogPoint(_index + count - 1, lastSeconds);
        (_travelEnd, _last, _index) = (last, last, last.Index + 1);
        (_exitStart, _retract) = (null, null);
        _depthAtTravelEnd = lastDepthMetres;
        if (_steadySpeed is not null)
        {
            _steadyStart ??= point;
            _steadyEnd = last;
        }
    }

    /// <summary>Ends the log and gives the phases found; further samples are not allowed.</summary>
    public RunPhases Complete()
    {
        if (_contact is not null)
        {
            End(toolFree: null);
        }

        return new RunPhases(_passes, _first, _last with { Index = _index });
    }

    /// <summary>Speed of a traverse past its ramp; with no such level, travel speed.</summary>
    private double UnderWaySpeed => Math.Max(_travelSpeed, _steadySpeed ?? _travelSpeed);

    private int UnderWay(ReadOnlySpan<double> speeds) =>
        _contact is not null && _travelling ? LeadingSamples.AtLeast(speeds, UnderWaySpeed) : 0;

    private bool Touches(in ToolSample sample) =>
        double.IsNaN(sample.ForceNewtons)
            ? double.IsNaN(sample.DepthMetres)
                ? Travels(sample)
                : sample.DepthMetres >= 0
            : sample.ForceNewtons >= _contactNewtons;

    private bool Travels(in ToolSample sample) =>
        double.IsNaN(sample.SpeedMetresPerSecond)
            ? sample.DepthMetres >= _depth.DeepestMetres - _toleranceMetres
                && sample.TimeSeconds >= _depth.FirstAtDepth?.TimeSeconds + _dwellSeconds
            : sample.SpeedMetresPerSecond >= _travelSpeed;

    private void Begin(LogPoint point)
    {
        _contact = point;
        (_travelStart, _travelEnd, _exitStart, _retract) = (null, null, null, null);
        (_steadyStart, _steadyEnd) = (null, null);
        _travelling = false;
        _depth.Clear();
    }

    private void Follow(in ToolSample sample, LogPoint point)
    {
        if (Travels(sample))
        {
            Travel(sample, point);
        }
        else
        {
            Stand(sample, point);
        }

        if (!_travelling)
        {
            _depth.Add(sample.DepthMetres, point);
        }
    }

    private void Travel(in ToolSample sample, LogPoint point)
    {
        _travelStart ??= point;
        _travelEnd = point;
        _depthAtTravelEnd = sample.DepthMetres;
        (_exitStart, _retract) = (null, null);
        _travelling |= sample.TimeSeconds - _travelStart.Value.TimeSeconds >= _holdSeconds;
        if (sample.SpeedMetresPerSecond >= _steadySpeed)
        {
            _steadyStart ??= point;
            _steadyEnd = point;
        }
    }

    private void Stand(in ToolSample sample, LogPoint point)
    {
        if (!_travelling)
        {
            (_travelStart, _travelEnd, _steadyStart, _steadyEnd) = (null, null, null, null);
        }

        _exitStart ??= point;

        var atDepth = _travelling ? _depthAtTravelEnd : _depth.DeepestMetres;
        var rising = !(sample.DepthMetres >= atDepth - _toleranceMetres);
        if (rising && (_travelling || !double.IsNaN(atDepth)))
        {
            _retract ??= point;
        }

        if (!Touches(sample) && (_retract is not null || double.IsNaN(sample.DepthMetres)))
        {
            End(point);
        }
    }

    private void End(LogPoint? toolFree)
    {
        if (_passes is [.., { HasTraverse: false }])
        {
            _passes.RemoveAt(_passes.Count - 1);
        }

        if (_travelling || _passes.Count == 0)
        {
            _passes.Add(Pass(toolFree));
        }

        _contact = null;
    }

    private ToolPass Pass(LogPoint? toolFree) =>
        new()
        {
            Contact = _contact!.Value,
            DwellStart = Earlier(_depth.FirstAtDepth, _travelling ? _travelStart : null),
            TraverseStart = _travelling ? _travelStart : null,
            TraverseEnd = _travelling ? _travelEnd : null,
            SteadyStart = _travelling ? _steadyStart : null,
            SteadyEnd = _travelling ? _steadyEnd : null,
            ExitStart = _travelling ? _exitStart : null,
            RetractStart = _retract,
            ToolFree = toolFree,
        };

    private static LogPoint? Earlier(LogPoint? point, LogPoint? bound) =>
        point is { } p && bound is { } b && b.Index < p.Index ? bound : point;
}
