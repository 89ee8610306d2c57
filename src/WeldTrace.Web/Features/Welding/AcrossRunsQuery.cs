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
    /// <summary>What the runs share, by the words of an address; what is no identity asks for nothing.</summary>
    public static RunFigureFilter FilterOf(string? machine, string? tool, string? welder) =>
        new(IdOf(machine), IdOf(tool), IdOf(welder));

    /// <summary>Identity that a word of an address names; null when it names none.</summary>
    public static Guid? IdOf(string? word) => Guid.TryParse(word, out var id) ? id : null;

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
