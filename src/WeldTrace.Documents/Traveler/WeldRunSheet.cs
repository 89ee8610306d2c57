using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.Traveler;

/// <summary>A joint of the vessel with its passes as designed.</summary>
public sealed record JointSheet
{
    public required string Name { get; init; }

    /// <summary>Whatever else describes the joint, values with units.</summary>
    public IReadOnlyList<LabelledValue> Particulars { get; init; } = [];

    public required PassPlan Plan { get; init; }

    /// <summary>One line per track of the plan, in the same order.</summary>
    public required IReadOnlyList<PassFigures> Passes { get; init; }

    /// <summary>What faces what between neighbouring passes and how much the shoulders overlap, in plain words.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];
}

/// <summary>Computed figures of one pass; everything else of its line comes from the plan's track of the same name.</summary>
public sealed record PassFigures
{
    /// <summary>Name of the <see cref="PassTrack"/> this line belongs to.</summary>
    public required string Name { get; init; }

    public required Length PathLength { get; init; }

    public Length? OverlapLength { get; init; }

    public TimeSpan? RunTime { get; init; }

    public RotationSpeed? SpindleSpeed { get; init; }

    public Speed? TravelSpeed { get; init; }
}

/// <summary>One check before welding.</summary>
/// <param name="Title">What was verified.</param>
/// <param name="Answer">What the records say or the welder confirmed.</param>
/// <param name="By">Rule whose records answered it, or the printed name of the welder.</param>
public sealed record CheckLine(string Title, string Answer, string By);

/// <summary>One weld run as recorded.</summary>
public sealed record WeldRunSheet
{
    public required string Reference { get; init; }

    public required string Joint { get; init; }

    public required string Pass { get; init; }

    public required StateMark State { get; init; }

    public required string Operator { get; init; }

    public required string Machine { get; init; }

    public required string Tool { get; init; }

    public required string ProcedureRevision { get; init; }

    public DateTimeOffset? StartedAt { get; init; }

    public DateTimeOffset? EndedAt { get; init; }

    public Length? Travelled { get; init; }

    /// <summary>Whatever else was recorded, values with units: log file and its hash, ambient values, remarks.</summary>
    public IReadOnlyList<LabelledValue> Particulars { get; init; } = [];

    /// <summary>The checks before welding.</summary>
    public IReadOnlyList<CheckLine> Checks { get; init; } = [];

    public IReadOnlyList<PhaseLine> Phases { get; init; } = [];

    /// <summary>What each parameter did in each phase.</summary>
    public IReadOnlyList<PhaseFigureLine> PhaseFigures { get; init; } = [];

    /// <summary>What else is known of each phase, and the margin of the plunge depth, in words.</summary>
    public IReadOnlyList<string> PhaseNotes { get; init; } = [];

    public IReadOnlyList<WindowLine> Windows { get; init; } = [];

    public IReadOnlyList<ExcursionLine> Excursions { get; init; } = [];

    public ProcessLogPlot? Chart { get; init; }

    public SeamPlan? Seam { get; init; }

    public Correction? Superseded { get; init; }
}

/// <summary>A phase of a run, in seconds of the log.</summary>
public sealed record PhaseLine(string Name, TimeSpan From, TimeSpan To);

/// <summary>One parameter in one phase; numbers as text in its unit.</summary>
/// <param name="Phase">Trade word.</param>
/// <param name="Parameter">Parameter in words.</param>
/// <param name="Unit">Unit of the numbers.</param>
/// <param name="Figures">Mean, standard deviation, 1 % below, median, 99 % below, drift, end less start.</param>
public sealed record PhaseFigureLine(
    string Phase,
    string Parameter,
    string Unit,
    IReadOnlyList<string> Figures
);

/// <summary>A parameter window of the procedure beside what was observed during the traverse; numbers as text in <paramref name="Unit"/>.</summary>
public sealed record WindowLine(string Parameter, string Unit)
{
    public string? SetPoint { get; init; }

    public string? Lower { get; init; }

    public string? Upper { get; init; }

    public string? ObservedMinimum { get; init; }

    public string? ObservedMean { get; init; }

    public string? ObservedMaximum { get; init; }

    public StateMark? Verdict { get; init; }
}

/// <summary>One excursion outside a window; numbers as text in <paramref name="Unit"/>.</summary>
public sealed record ExcursionLine(string Number, string Parameter, string Unit)
{
    /// <summary>Value furthest outside the window.</summary>
    public string? Extreme { get; init; }

    /// <summary>The limit that was crossed.</summary>
    public string? Limit { get; init; }

    /// <summary>Path along the seam from the start of the traverse.</summary>
    public Length? From { get; init; }

    public Length? To { get; init; }

    public TimeSpan? Duration { get; init; }

    /// <summary>Number of the finding it opened; null when it stayed below the debounce.</summary>
    public string? Finding { get; init; }
}
