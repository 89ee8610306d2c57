using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Features.Procedures.LiveFigures;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Procedures.Write;

/// <summary>The half-typed procedure, as the form posts it for its figures.</summary>
public sealed class FiguresForm
{
    public WriteProcedureForm In { get; set; } = new();
}

public static class FiguresEndpoint
{
    /// <summary>Works out the figures of a form while it is being typed; nothing is saved.</summary>
    public static void MapProcedureFigures(this IEndpointRouteBuilder endpoints) =>
        endpoints
            .MapPost(
                Routes.ProcedureFigures,
                async (
                    [FromForm] FiguresForm form,
                    IDbContextFactory<WeldTraceDbContext> contexts,
                    CancellationToken cancellation
                ) =>
                {
                    await using var db = await contexts.CreateDbContextAsync(cancellation);
                    var tool = await db
                        .ToolDesigns.AsNoTracking()
                        .SingleOrDefaultAsync(d => d.Id == form.In.ToolDesignId, cancellation);
                    return new RazorComponentResult<FiguresOfWindows>(
                        new
                        {
                            Content = TypedProcedure.ReadWhatStands(form.In),
                            Tool = tool?.Geometry,
                            Pin = await db.FindMeasuredPinAsync(form.In.ToolDesignId, cancellation),
                            Drawn = await db.FindDrawnJointsAsync(form.In.Number, cancellation),
                        }
                    );
                }
            )
            .RequireAuthorization(Policies.Engineering);
}
