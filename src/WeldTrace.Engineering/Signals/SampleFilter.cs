namespace WeldTrace.Engineering.Signals;

/// <summary>How a channel is smoothed before it is judged.</summary>
public enum SampleFilterKind
{
    /// <summary>The middle one of the last samples in the order of their size: a single spike is passed over.</summary>
    MovingMedian,

    /// <summary>The mean of the last samples: noise grows smaller.</summary>
    MovingMean,
}

/// <summary>
/// A filter over the last samples of a channel. It looks back only, so that what it shows comes later by half its length, and it begins anew
/// with each stretch that is judged, with as many samples as there are by then.
/// </summary>
/// <param name="Kind">Median or mean.</param>
/// <param name="Samples">Samples looked at, an odd number from 3 to 101.</param>
public sealed record SampleFilter(SampleFilterKind Kind, int Samples)
{
    /// <summary>Fewest samples.</summary>
    public const int Fewest = 3;

    /// <summary>Most samples.</summary>
    public const int Most = 101;

    /// <summary>Whether the number of samples is odd and within its bounds, and the kind is one there is.</summary>
    public bool IsSensible =>
        Enum.IsDefined(Kind) && Samples is >= Fewest and <= Most && int.IsOddInteger(Samples);

    /// <summary>The filter in words, for instance "moving median of 5 samples".</summary>
    public string Text =>
        FormattableString.Invariant(
            $"moving {(Kind == SampleFilterKind.MovingMedian ? "median" : "mean")} of {Samples} samples"
        );
}
