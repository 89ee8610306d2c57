namespace WeldTrace.Engineering.Signals;

/// <summary>One stay of the tool in the work, from contact to free; absent points were not reached.</summary>
public sealed record ToolPass
{
    /// <summary>First sample in contact.</summary>
    public required LogPoint Contact { get; init; }

    /// <summary>First sample at depth; none when depth is not logged.</summary>
    public LogPoint? DwellStart { get; init; }

    /// <summary>First sample of the traverse.</summary>
    public LogPoint? TraverseStart { get; init; }

    /// <summary>Last sample of the traverse.</summary>
    public LogPoint? TraverseEnd { get; init; }

    /// <summary>First sample of the traverse at steady speed.</summary>
    public LogPoint? SteadyStart { get; init; }

    /// <summary>Last sample of the traverse at steady speed.</summary>
    public LogPoint? SteadyEnd { get; init; }

    /// <summary>First sample after the traverse, still in the work.</summary>
    public LogPoint? ExitStart { get; init; }

    /// <summary>First sample on the way out.</summary>
    public LogPoint? RetractStart { get; init; }

    /// <summary>First sample free of the work; none when the log ends before.</summary>
    public LogPoint? ToolFree { get; init; }

    /// <summary>Whether a person stated the bounds, so that its ramps are as long as stated.</summary>
    public bool AreBoundsStated { get; init; }

    /// <summary>Whether the tool travelled.</summary>
    public bool HasTraverse => TraverseStart is not null;

    /// <summary>
    /// Time of the traverse without its ramps, in s, both ends included. A ramp is never taken to be
    /// longer than <paramref name="longestRamp"/>, so that a slow end of a pass stays under judgement.
    /// </summary>
    /// <param name="longestRamp">Zero or more.</param>
    /// <exception cref="InvalidOperationException">The tool did not travel.</exception>
    public (double FromSeconds, double ToSeconds) SteadyTraverse(TimeSpan longestRamp)
    {
        if (TraverseStart is not { } start || TraverseEnd is not { } end)
        {
            throw new InvalidOperationException("The tool did not travel in this pass.");
        }

        if (SteadyStart is not { } steadyStart || SteadyEnd is not { } steadyEnd)
        {
            return (start.TimeSeconds, end.TimeSeconds);
        }

        if (AreBoundsStated)
        {
            return (steadyStart.TimeSeconds, steadyEnd.TimeSeconds);
        }

        var ramp = longestRamp.TotalSeconds;
        return (
            Math.Min(steadyStart.TimeSeconds, start.TimeSeconds + ramp),
            Math.Max(steadyEnd.TimeSeconds, end.TimeSeconds - ramp)
        );
    }
}
