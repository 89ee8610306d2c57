using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>
/// Judges one column by one window. Limits are brought into the last digits and rounded to one of
/// the column when they are within a millionth of it, so that a sample equal to its limit is inside.
/// After a filter they are not rounded: a mean is not bound to whole digits.
/// </summary>
internal sealed class WindowJudge
{
    private const double DigitSlack = 1e-6;
    private const double RelativeSlack = 1e-12;

    private readonly LogColumn _column;
    private readonly ChannelWindow _window;
    private readonly ExcursionDetector _detector;
    private readonly MovingWindow? _filter;
    private double[] _filtered = [];

    public WindowJudge(
        LogColumn column,
        ChannelWindow window,
        ExcursionRule rule,
        SampleFilter? filter = null
    )
    {
        if (window.SiUnit != column.SiUnit)
        {
            throw new ArgumentException(
                $"The window is in {window.SiUnit}, the channel in {column.SiUnit}.",
                nameof(window)
            );
        }

        (_column, _window) = (column, window);
        var (lower, upper) = (AsLogged(window.LowerSi), AsLogged(window.UpperSi));
        var (from, to) = column.ScaleToSi < 0 ? (upper, lower) : (lower, upper);
        _filter = filter is null ? null : new MovingWindow(filter);
        _detector = new ExcursionDetector(Inside(from, -1), Inside(to, 1), rule);
    }

    /// <summary>Takes the samples of a piece of a frame; a calm frame is passed over by its extremes alone.</summary>
    public void Add(
        LogFrames frames,
        Range rows,
        ReadOnlySpan<double> seconds,
        ReadOnlySpan<double> metres
    )
    {
        var chunk = frames.Chunk(_column);
        var digits = _column.DigitsPerUnit;
        if (_filter is not null)
        {
            var filtered = frames.Room(ref _filtered)[rows];
            _filter.Apply(frames.Digits(_column)[rows], filtered);
            _detector.Add(seconds[rows], filtered, metres[rows]);
        }
        else if (
            _detector.IsCalmBetween(chunk.MinimumAsLogged * digits, chunk.MaximumAsLogged * digits)
        )
        {
            _detector.PassOver(rows.GetOffsetAndLength(frames.Count).Length);
        }
        else
        {
            _detector.Add(seconds[rows], frames.Digits(_column)[rows], metres[rows]);
        }
    }

    /// <summary>Whether the window holds in a piece of a frame; that of the traverse holds without its ramps.</summary>
    public bool Concerns(FramePiece piece) =>
        _window.Phase == WeldPhase.Traverse
            ? piece.Steady is not null
            : piece.Phase == _window.Phase;

    public void Interrupt()
    {
        _filter?.Clear();
        _detector.Interrupt();
    }

    public IEnumerable<ChannelExcursion> Complete(CircularTrack? track) =>
        _detector.Complete().Select(excursion => Describe(excursion, track));

    private ChannelExcursion Describe(Excursion found, CircularTrack? track)
    {
        var isTurned = _column.ScaleToSi < 0;
        var side =
            isTurned == (found.Side == ExcursionSide.High) ? ExcursionSide.Low : ExcursionSide.High;
        var (start, end) = (
            Length.FromMetres(found.StartMetres),
            Length.FromMetres(found.EndMetres)
        );
        return new ChannelExcursion
        {
            Channel = _column.Channel,
            Column = _column.Name,
            Side = side,
            Phase = _window.Phase,
            IsWarning = _window.IsWarning,
            StartSeconds = found.StartSeconds,
            EndSeconds = found.EndSeconds,
            Start = start,
            End = end,
            StartAngle = track?.AngleAt(start),
            EndAngle = track?.AngleAt(end),
            ExtremeSi = _column.DigitsToSi(found.ExtremeInSampleUnit),
            ExtremeSeconds = found.ExtremeSeconds,
            LimitSi = (side == ExcursionSide.High ? _window.UpperSi : _window.LowerSi)!.Value,
            SiUnit = _column.SiUnit,
        };
    }

    private double? AsLogged(double? si) => (si - _column.LoggedUnit.OffsetSi) / _column.ScaleToSi;

    /// <summary>The outermost value that is still inside, on the lower (-1) or the upper (1) side.</summary>
    private double? Inside(double? limit, int side)
    {
        if (limit is not { } value)
        {
            return null;
        }

        if (!_column.IsFixedDecimal)
        {
            return value + (side * RelativeSlack * Math.Abs(value));
        }

        var digits = value * _column.DigitsPerUnit;
        if (_filter is not null)
        {
            // What a filter shows may lie between two digits, and so between the limit and the last digit inside it.
            return digits + (side * DigitSlack);
        }

        return side < 0 ? Math.Ceiling(digits - DigitSlack) : Math.Floor(digits + DigitSlack);
    }
}
