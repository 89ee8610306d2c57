using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Features.Home;

/// <summary>Tools whose life is too short for the next vessel: the largest of the released designs that is welded with them.</summary>
internal static class ToolWork
{
    public static async Task<IReadOnlyList<WaitingWork>> ReadAsync(
        WeldTraceDbContext db,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (!actor.HasAny(Role.Operator, Role.Engineer, Role.QualityManager))
        {
            return [];
        }

        var passes = (await db.LoadPlannedPassesAsync(cancellation)).ToLookup(p => p.ToolDesignId);
        var tools = await db
            .Tools.AsNoTracking()
            .Where(t => t.State == ToolState.InService)
            .OrderBy(t => t.Mark)
            .ToListAsync(cancellation);
        return
        [
            .. tools
                .OrderBy(t => t.Remaining)
                .Select(t => Near(t, [.. passes[t.DesignId]]))
                .OfType<WaitingWork>(),
        ];
    }

    private static WaitingWork? Near(Tool tool, IReadOnlyList<PlannedPass> passes)
    {
        var vessel = Length.FromMetres(
            passes
                .GroupBy(p => p.Design)
                .Select(design => design.Sum(p => p.Path.Metres))
                .DefaultIfEmpty()
                .Max()
        );
        var fitsNone =
            tool.Remaining <= Length.Zero
            || (passes.Count > 0 && passes.All(p => p.Path > tool.Remaining));
        return !fitsNone && tool.Remaining >= vessel
            ? null
            : new WaitingWork(
                fitsNone ? Urgency.Week : Urgency.Month,
                fitsNone ? Mark.Failed : Mark.Warning,
                fitsNone ? "no pass left" : "little life left",
                FormattableString.Invariant(
                    $"Tool {tool.Mark} has {tool.Remaining.Metres:0.00} m left"
                )
                    + (
                        vessel > Length.Zero
                            ? FormattableString.Invariant(
                                $"; the next vessel takes {vessel.Metres:0.00} m"
                            )
                            : ""
                    ),
                Routes.Tool(tool.Id)
            );
    }
}
