namespace WeldTrace.ProcessLogs;

/// <summary>A unit of measurement: value in SI = number times <paramref name="Factor"/> plus <paramref name="OffsetSi"/>.</summary>
/// <param name="Symbol">Usual symbol.</param>
/// <param name="Quantity">What it measures.</param>
/// <param name="Factor">More than zero.</param>
/// <param name="OffsetSi">Zero but for temperature scales.</param>
public sealed record LogUnit(
    string Symbol,
    LogQuantity Quantity,
    double Factor,
    double OffsetSi = 0
)
{
    /// <summary>A plain number.</summary>
    public static LogUnit None { get; } = new("", LogQuantity.None, 1);
}
