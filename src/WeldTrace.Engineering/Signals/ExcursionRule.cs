using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Signals;

/// <summary>When a stretch outside the window counts as an excursion. The defaults are common practice, no published source.</summary>
/// <param name="SamplePeriod">Time between two samples; more than zero.</param>
public sealed record ExcursionRule(TimeSpan SamplePeriod)
{
    /// <summary>Shortest stretch that counts; zero or more.</summary>
    public TimeSpan Debounce { get; init; } = TimeSpan.FromSeconds(0.5);

    /// <summary>Shortest length along the seam that counts, however short its time; none: only time counts.</summary>
    public Length? DebounceLength { get; init; }

    /// <summary>Longest return inside the window that does not end a stretch; zero or more.</summary>
    public TimeSpan MergeGap { get; init; } = TimeSpan.FromSeconds(0.25);
}
