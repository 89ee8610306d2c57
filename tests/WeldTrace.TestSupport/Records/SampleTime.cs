namespace WeldTrace.TestSupport.Records;

/// <summary>The instant at which the invented records are made.</summary>
public static class SampleTime
{
    public static DateTimeOffset Start { get; } = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);

    /// <summary>The day of <see cref="Start"/>.</summary>
    public static DateOnly Day { get; } = DateOnly.FromDateTime(Start.UtcDateTime);
}
