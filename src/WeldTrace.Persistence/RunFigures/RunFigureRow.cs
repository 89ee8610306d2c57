using WeldTrace.Domain.Procedures;

namespace WeldTrace.Persistence.RunFigures;

/// <summary>What one parameter did over the judged traverse of one run, beside what it was welded with: for looking across runs.</summary>
public sealed class RunFigureRow
{
    public required Guid RunId { get; init; }

    public required WeldParameter Parameter { get; init; }

    public required DateTimeOffset StartedAt { get; init; }

    public required Guid ProcedureRevisionId { get; init; }

    public required Guid MachineId { get; init; }

    public required Guid ToolId { get; init; }

    public required Guid OperatorId { get; init; }

    public required double MeanSi { get; set; }

    public required double StandardDeviationSi { get; set; }

    /// <summary>What the tool had welded when the run was over, in m.</summary>
    public required double ToolMetres { get; set; }
}
