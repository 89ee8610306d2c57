namespace WeldTrace.ProcessLogs.Storage;

/// <summary>The samples of one column in one full chunk, while they are compressed and checked beside the reading.</summary>
internal sealed class ColumnSlice
{
    /// <summary>Whole numbers of the last digit; of no meaning when the samples are floating point.</summary>
    public int[] Codes { get; set; } = new int[ColumnBuffer.Capacity];

    public double[] Values { get; set; } = [];

    public List<int> NegativeZeros { get; set; } = [];

    public int Count { get; set; }

    public bool IsFloat { get; set; }

    public int Decimals { get; set; }

    /// <summary>Decimals to render with, as far as known by this chunk.</summary>
    public ColumnStyle Style { get; set; }
}

/// <summary>How the numbers of a column are rendered.</summary>
/// <param name="Decimals">Fewest decimals.</param>
/// <param name="IsUniform">Whether every number so far was written with that many.</param>
internal readonly record struct ColumnStyle(int Decimals, bool IsUniform);
