namespace WeldTrace.Engineering.Signals;

internal sealed class ExcursionSideTracker(
    ExcursionSide side,
    ExcursionRule rule,
    List<Excursion> excursions
)
{
    private readonly double _period = rule.SamplePeriod.TotalSeconds;
    private readonly double _slack = rule.SamplePeriod.TotalSeconds * 1e-3;
    private readonly double _debounce = rule.Debounce.TotalSeconds;
    private readonly double _mergeGap = rule.MergeGap.TotalSeconds;
    private readonly double _debounceMetres =
        rule.DebounceLength?.Metres ?? double.PositiveInfinity;
    private Excursion _open;
    private bool _wasOutside;

    public bool IsOpen { get; private set; }

    public long Stretches { get; private set; }

    public long Samples { get; private set; }

    public void Add(bool outside, double timeSeconds, double value, double positionMetres)
    {
        if (!outside && !IsOpen)
        {
            return;
        }

        if (_wasOutside)
        {
            _open = _open with { EndMetres = positionMetres };
        }

        if (outside)
        {
            Extend(timeSeconds, value, positionMetres);
        }
        else if (timeSeconds - _open.EndSeconds > _mergeGap + _slack)
        {
            Close();
        }

        _wasOutside = outside;
    }

    public void Close()
    {
        if (IsOpen && (LastsLong || IsLong))
        {
            excursions.Add(_open);
        }

        (IsOpen, _wasOutside) = (false, false);
    }

    private bool LastsLong => _open.EndSeconds - _open.StartSeconds >= _debounce - _slack;

    // Positions are sums of many steps, so equal lengths differ in their last digits.
    private bool IsLong => _open.EndMetres - _open.StartMetres >= _debounceMetres * (1 - 1e-9);

    private void Extend(double timeSeconds, double value, double positionMetres)
    {
        Samples++;
        Stretches += _wasOutside ? 0 : 1;
        if (IsOpen && timeSeconds - _open.EndSeconds > _mergeGap + _slack)
        {
            Close();
        }

        if (!IsOpen)
        {
            IsOpen = true;
            _open = new(side, timeSeconds, 0, positionMetres, positionMetres, value, timeSeconds);
        }

        var further =
            side == ExcursionSide.High
                ? value > _open.ExtremeInSampleUnit
                : value < _open.ExtremeInSampleUnit;
        _open = _open with
        {
            EndSeconds = timeSeconds + _period,
            ExtremeInSampleUnit = further ? value : _open.ExtremeInSampleUnit,
            ExtremeSeconds = further ? timeSeconds : _open.ExtremeSeconds,
        };
    }
}
