namespace WeldTrace.Engineering.Signals;

/// <summary>A batch of samples, channel by channel; all four are equally long, and NaN stands for a channel that is not logged.</summary>
public readonly ref struct ToolSamples
{
    /// <summary>Puts a batch together.</summary>
    /// <param name="timeSeconds">Time stamps in s, finite, increasing.</param>
    /// <param name="forceNewtons">Axial force in N, positive when the tool presses on the work.</param>
    /// <param name="depthMetres">Depth in m below the surface of the work, positive inside the work.</param>
    /// <param name="speedMetresPerSecond">Travel speed in m/s, positive in either direction.</param>
    /// <exception cref="ArgumentException">The channels are not equally long.</exception>
    public ToolSamples(
        ReadOnlySpan<double> timeSeconds,
        ReadOnlySpan<double> forceNewtons,
        ReadOnlySpan<double> depthMetres,
        ReadOnlySpan<double> speedMetresPerSecond
    )
    {
        var count = timeSeconds.Length;
        if (
            forceNewtons.Length != count
            || depthMetres.Length != count
            || speedMetresPerSecond.Length != count
        )
        {
            throw new ArgumentException("The channels are not equally long.");
        }

        TimeSeconds = timeSeconds;
        ForceNewtons = forceNewtons;
        DepthMetres = depthMetres;
        SpeedMetresPerSecond = speedMetresPerSecond;
    }

    /// <summary>Time stamps in s.</summary>
    public ReadOnlySpan<double> TimeSeconds { get; }

    /// <summary>Axial force in N.</summary>
    public ReadOnlySpan<double> ForceNewtons { get; }

    /// <summary>Depth in m.</summary>
    public ReadOnlySpan<double> DepthMetres { get; }

    /// <summary>Travel speed in m/s.</summary>
    public ReadOnlySpan<double> SpeedMetresPerSecond { get; }

    /// <summary>Number of samples.</summary>
    public int Count => TimeSeconds.Length;

    /// <summary>One moment of the batch.</summary>
    /// <param name="index">0 to <see cref="Count"/> - 1.</param>
    public ToolSample this[int index] =>
        new(
            TimeSeconds[index],
            ForceNewtons[index],
            DepthMetres[index],
            SpeedMetresPerSecond[index]
        );
}
