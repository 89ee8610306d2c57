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
);

/// <summary>What the columns of a machine's logs mean; remembered per machine.</summary>
public sealed partial record LogMapping(IReadOnlyList<ColumnMapping> Columns);
