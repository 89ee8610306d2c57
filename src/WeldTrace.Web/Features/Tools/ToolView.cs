using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Tools;

/// <summary>A tool with what its figures are computed from.</summary>
/// <param name="Tool">The tool.</param>
/// <param name="Design">Its design.</param>
/// <param name="Family">What every tool of that design has done, this one included.</param>
/// <param name="Passes">Passes of the released vessel designs that it may weld.</param>
/// <param name="Runs">Runs on vessels that it welded; its other uses were test pieces or earlier records.</param>
public sealed record ToolView(
    Tool Tool,
    ToolDesign Design,
    IReadOnlyList<ToolLife> Family,
    IReadOnlyList<PlannedPass> Passes,
    IReadOnlySet<Guid> Runs
);
