namespace WeldTrace.ProcessLogs;

/// <summary>Bounds for the reading of a log.</summary>
public sealed record LogReadOptions
{
    /// <summary>Longest file taken.</summary>
    public long LengthLimitBytes { get; init; } = 2L * 1024 * 1024 * 1024;

    /// <summary>Fewest rows that make a log.</summary>
    public int MinimumRows { get; init; } = 10;

    /// <summary>Reading stops after this many problems.</summary>
    public int ProblemLimit { get; init; } = 20;
}

/// <summary>Either a whole log, or the reasons why there is none.</summary>
public sealed record LogReadResult(ProcessLog? Log, IReadOnlyList<LogProblem> Problems);
