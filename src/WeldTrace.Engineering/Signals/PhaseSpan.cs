namespace WeldTrace.Engineering.Signals;

/// <summary>A sample of a log: its zero-based index and its time stamp.</summary>
/// <param name="Index">Zero-based index of the sample.</param>
/// <param name="TimeSeconds">Time stamp in s, as logged.</param>
public readonly record struct LogPoint(long Index, double TimeSeconds);

/// <summary>A stretch of samples in one phase.</summary>
/// <param name="Phase">The phase.</param>
/// <param name="First">First sample of the phase.</param>
/// <param name="Next">First sample after the phase; at the end of the log, the sample count and the last time stamp.</param>
public readonly record struct PhaseSpan(WeldPhase Phase, LogPoint First, LogPoint Next)
{
    /// <summary>Time from the start of the phase to the start of the next one; zero or more, to the microsecond.</summary>
    public TimeSpan Duration =>
        TimeSpan.FromMicroseconds(Math.Round((Next.TimeSeconds - First.TimeSeconds) * 1e6));

    /// <summary>Number of samples in the phase; one or more.</summary>
    public long SampleCount => Next.Index - First.Index;
}
