namespace WeldTrace.Engineering.Statistics;

/// <summary>Centre line and limits of a control chart, in the unit of the values.</summary>
/// <param name="Lower">Lower limit.</param>
/// <param name="Centre">Centre line.</param>
/// <param name="Upper">Upper limit.</param>
public readonly record struct ControlLimits(double Lower, double Centre, double Upper)
{
    /// <summary>Whether a value lies beyond a limit: a signal to look for a cause, no judgement of acceptance.</summary>
    public bool IsSignal(double value) => value < Lower || value > Upper;
}
