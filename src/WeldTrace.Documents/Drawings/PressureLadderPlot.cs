using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.Drawings;

/// <summary>The planned stages of a pressure test over time, with the readings taken; gauge pressures.</summary>
public sealed record PressureLadderPlot
{
    public required IReadOnlyList<LadderStage> Stages { get; init; }

    public IReadOnlyList<LadderReading> Readings { get; init; } = [];

    /// <summary>What a logger wrote, thinned for drawing; one line for each file.</summary>
    public IReadOnlyList<IReadOnlyList<LadderReading>> Traces { get; init; } = [];

    /// <summary>Levels drawn as dashed lines, for instance the maximum expected operating pressure.</summary>
    public IReadOnlyList<PressureLevel> Levels { get; init; } = [];
}

/// <summary>The pressure rises or falls from the stage before, reaches the target and is held.</summary>
/// <param name="Name">Name of the stage.</param>
/// <param name="Target">Gauge pressure held.</param>
/// <param name="Begins">Time since the start of the test at which the pressure starts to change.</param>
/// <param name="HoldBegins">Time at which the target is reached.</param>
/// <param name="Ends">Time at which the stage ends.</param>
public sealed record LadderStage(
    string Name,
    Pressure Target,
    TimeSpan Begins,
    TimeSpan HoldBegins,
    TimeSpan Ends
);

/// <summary>One reading of the gauge.</summary>
public sealed record LadderReading(TimeSpan At, Pressure Gauge);

/// <summary>A named gauge pressure.</summary>
public sealed record PressureLevel(string Name, Pressure Gauge);
