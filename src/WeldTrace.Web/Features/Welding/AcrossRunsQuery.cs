using Microsoft.AspNetCore.WebUtilities;
using WeldTrace.Domain.Procedures;
using WeldTrace.Persistence.RunFigures;

namespace WeldTrace.Web.Features.Welding;

/// <summary>Which runs are laid side by side, and by what.</summary>
public sealed record AcrossRunsQuery(
    Guid? Procedure,
    WeldParameter Parameter,
    RunFigureFilter Filter
)
{
    /// <summary>The latest runs that charts are made of.</summary>
    public const int MostRuns = 1000;

    /// <summary>Address of the review of one of these runs, among the others.</summary>
    public string ReviewOf(Guid run) =>
        QueryHelpers.AddQueryString(
            Routes.ReviewSignal(run, Parameter.ToString()),
            new Dictionary<string, string?>
            {
                ["machine"] = Filter.MachineId?.ToString(),
                ["tool"] = Filter.ToolId?.ToString(),
                ["welder"] = Filter.OperatorId?.ToString(),
            }
        );
}
