using WeldTrace.Engineering.Signals;
using WeldTrace.ProcessLogs.Reading;

namespace WeldTrace.ProcessLogs;

/// <summary>What one column of a machine's logs means.</summary>
/// <param name="Column">Name of the column as it stands in the header.</param>
/// <param name="Channel">What it measures.</param>
/// <param name="Unit">Unit of the numbers in the file, for instance <c>kN</c>; empty for a plain number.</param>
/// <param name="Factor">Multiplies each number, for instance -1 to turn the sign; finite, not zero.</param>
public sealed record ColumnMapping(
    string Column,
    LogChannel Channel,
    string Unit,
    double Factor = 1
)
{
    /// <summary>How the channel is smoothed before it is judged; null when it is judged as logged. The samples are kept as logged.</summary>
    public SampleFilter? Filter { get; init; }
}

/// <summary>What the columns of a machine's logs mean; remembered per machine.</summary>
/// <param name="Columns">Every column of the machine's logs, in the order of the file it was made from.</param>
public sealed record LogMapping(IReadOnlyList<ColumnMapping> Columns)
{
    /// <summary>What is wrong with the mapping itself; empty when it can be used.</summary>
    public IReadOnlyList<LogProblem> Check() => MappingCheck.Of(this);

    /// <summary>The filters of the channels that are judged after one.</summary>
    public IReadOnlyDictionary<LogChannel, SampleFilter> Filters =>
        Columns
            .Where(column => column.Filter is not null && !LogChannels.MayRepeat(column.Channel))
            .ToDictionary(column => column.Channel, column => column.Filter!);

    /// <summary>How the columns of a file differ from the mapping; empty when they agree. Their order is free.</summary>
    public IReadOnlyList<LogProblem> CompareWith(IReadOnlyList<PreviewColumn> columns) =>
        MappingComparison.Of(this, columns);
}
