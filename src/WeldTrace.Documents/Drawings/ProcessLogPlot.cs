namespace WeldTrace.Documents.Drawings;

/// <summary>The channels of one logged run over one time axis.</summary>
public sealed record ProcessLogPlot
{
    /// <summary>Time of each sample since the start of the log, rising.</summary>
    public required IReadOnlyList<double> TimesInSeconds { get; init; }

    public required IReadOnlyList<LogChannel> Channels { get; init; }

    public IReadOnlyList<LogPhase> Phases { get; init; } = [];
}

/// <summary>One channel; as many values as there are times, NaN where a sample is missing.</summary>
/// <param name="Name">Plain name, for instance <c>Axial force</c>.</param>
/// <param name="Unit">Unit of every number of this channel.</param>
/// <param name="ValuesInUnit">The samples.</param>
public sealed record LogChannel(string Name, string Unit, IReadOnlyList<double> ValuesInUnit)
{
    /// <summary>The window of the procedure, in the channel's unit.</summary>
    public ChannelWindow? Window { get; init; }

    public IReadOnlyList<LogExcursion> Excursions { get; init; } = [];
}

/// <summary>A parameter window in the unit of its channel; a limit that is not set is null.</summary>
public sealed record ChannelWindow(
    double? LowerInUnit,
    double? SetPointInUnit,
    double? UpperInUnit
);

/// <summary>A phase of the run: plunge, dwell, traverse or exit.</summary>
public sealed record LogPhase(string Name, TimeSpan From, TimeSpan To);

/// <summary>A stretch of time during which the channel was outside its window.</summary>
public sealed record LogExcursion(string Number, TimeSpan From, TimeSpan To);
