using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Welding;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.Files;

namespace WeldTrace.Web.Features.Welding.ReadLog;

/// <summary>A brought file, looked at before its log is taken.</summary>
public sealed record ReadLogView
{
    public required WeldRun Run { get; init; }

    public required Machine Machine { get; init; }

    /// <summary>The file; null when it is not here any more.</summary>
    public required StagedLog? Staged { get; init; }

    /// <summary>Its start; null when it cannot be a log.</summary>
    public required LogPreview? Preview { get; init; }

    /// <summary>Why it cannot be a log, or how its columns differ from the machine's mapping.</summary>
    public required IReadOnlyList<LogProblem> Problems { get; init; }

    /// <summary>The machine's mapping; null when it has brought no log yet.</summary>
    public required LogMapping? Remembered { get; init; }
}
