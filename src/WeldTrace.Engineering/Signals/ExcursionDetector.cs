namespace WeldTrace.Engineering.Signals;

/// <summary>
/// Finds the stretches in which a signal is strictly outside [lower, upper], sample by sample. Stretches on the
/// same side that are not further apart than the merge gap are one; one that reaches neither the debounce in time nor, if stated, that in length is dropped.
/// Times are compared to within a thousandth of the sample period.
/// </summary>
public sealed class ExcursionDetector
{
    private readonly List<Excursion> _excursions = [];
    private readonly ExcursionSideTracker _low;
    private readonly ExcursionSideTracker _high;
    private readonly double _lower;
    private readonly double _upper;

    /// <summary>Makes a detector.</summary>
    /// <param name="lowerInSampleUnit">Lower limit in the unit of the samples; none: not judged.</param>
    /// <param name="upperInSampleUnit">Upper limit in the unit of the samples; none: not judged.</param>
    /// <param name="rule">Debounce, merge gap and sample period.</param>
    /// <exception cref="ArgumentException">The lower limit is above the upper one, or a limit is NaN.</exception>
    public ExcursionDetector(
        double? lowerInSampleUnit,
        double? upperInSampleUnit,
        ExcursionRule rule
    )
    {
        _lower = lowerInSampleUnit ?? double.NegativeInfinity;
        _upper = upperInSampleUnit ?? double.PositiveInfinity;
        if (!(_lower <= _upper))
        {
            throw new ArgumentException(
                "The lower limit is above the upper one, or is not a number."
            );
        }

        _low = new ExcursionSideTracker(ExcursionSide.Low, rule, _excursions);
        _high = new ExcursionSideTracker(ExcursionSide.High, rule, _excursions);
    }

    /// <summary>Samples taken.</summary>
    public long SampleCount { get; private set; }

    /// <summary>Stretches outside the window before merging and debouncing.</summary>
    public long RawStretches => _low.Stretches + _high.Stretches;

    /// <summary>Samples outside the window.</summary>
    public long SamplesOutside => _low.Samples + _high.Samples;

    /// <summary>Share of samples inside the window, 0 to 1; 1 when there are none.</summary>
    public double FractionInside =>
        SampleCount == 0 ? 1 : (double)(SampleCount - SamplesOutside) / SampleCount;

    /// <summary>Whether samples that all lie between two values change nothing: they are inside, and no stretch is open.</summary>
    /// <param name="least">Least of them, in the unit of the limits.</param>
    /// <param name="greatest">Greatest of them.</param>
    public bool IsCalmBetween(double least, double greatest) =>
        !_low.IsOpen && !_high.IsOpen && least >= _lower && greatest <= _upper;

    /// <summary>Takes samples of which <see cref="IsCalmBetween"/> is true, without looking at them.</summary>
    public void PassOver(int count) => SampleCount += count;

    /// <summary>Takes the next sample.</summary>
    /// <param name="timeSeconds">Time stamp in s, after the one before.</param>
    /// <param name="valueInSampleUnit">The value, in the unit of the limits.</param>
    /// <param name="positionMetres">Position along the seam in m.</param>
    public void Add(double timeSeconds, double valueInSampleUnit, double positionMetres)
    {
        SampleCount++;
        _low.Add(valueInSampleUnit < _lower, timeSeconds, valueInSampleUnit, positionMetres);
        _high.Add(valueInSampleUnit > _upper, timeSeconds, valueInSampleUnit, positionMetres);
    }

    /// <summary>Takes a batch of samples; those inside the window while no stretch is open are passed over together.</summary>
    /// <param name="timeSeconds">Time stamps in s, increasing.</param>
    /// <param name="valuesInSampleUnit">The values, in the unit of the limits; as many as time stamps.</param>
    /// <param name="positionMetres">Positions along the seam in m; as many as time stamps.</param>
    public void Add(
        ReadOnlySpan<double> timeSeconds,
        ReadOnlySpan<double> valuesInSampleUnit,
        ReadOnlySpan<double> positionMetres
    )
    {
        for (var next = 0; next < valuesInSampleUnit.Length; next++)
        {
            if (!_low.IsOpen && !_high.IsOpen)
            {
                var inside = LeadingSamples.Inside(valuesInSampleUnit[next..], _lower, _upper);
                SampleCount += inside;
                next += inside;
            }

            if (next < valuesInSampleUnit.Length)
            {
                Add(timeSeconds[next], valuesInSampleUnit[next], positionMetres[next]);
            }
        }
    }

    /// <summary>Ends the stretch under judgement; the next sample starts a new one.</summary>
    public void Interrupt()
    {
        _low.Close();
        _high.Close();
    }

    /// <summary>Ends the judgement and gives the excursions in order of their start.</summary>
    public IReadOnlyList<Excursion> Complete()
    {
        Interrupt();
        return [.. _excursions.OrderBy(excursion => excursion.StartSeconds)];
    }
}
