using WeldTrace.Engineering.Quantities;

namespace WeldTrace.ProcessLogs;

/// <summary>The phases of a run as the trade names them.</summary>
public enum TradePhase
{
    /// <summary>From contact until the tool is at depth.</summary>
    Plunge,

    /// <summary>At depth, not travelling.</summary>
    Dwell,

    /// <summary>Getting up to speed, or slowing down before the seam is closed.</summary>
    Ramp,

    /// <summary>Travelling at speed.</summary>
    Traverse,

    /// <summary>Travelling over what is welded already.</summary>
    Overlap,

    /// <summary>From the end of travel until the tool is free.</summary>
    Exit,
}

/// <summary>What a run did in one phase; stretches of the same phase are taken together.</summary>
/// <param name="Phase">The phase.</param>
/// <param name="Seconds">Time from the first to the last sample of each stretch.</param>
/// <param name="Path">Path along the seam.</param>
/// <param name="SpindleEnergy">Mechanical energy of the spindle; none without torque and spindle speed.</param>
/// <param name="Columns">Statistics of each column, with percentiles, drift and change.</param>
public sealed record PhaseFigures(
    TradePhase Phase,
    double Seconds,
    Length Path,
    Energy? SpindleEnergy,
    IReadOnlyList<PhaseStatistics> Columns
);
