using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Designs.Draw;

/// <summary>Draws a new design, or changes a draft.</summary>
public sealed class DrawDesignHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<VesselDesign?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .VesselDesigns.AsNoTracking()
            .SingleOrDefaultAsync(d => d.Id == id, cancellation);
    }

    /// <param name="id">Draft to change; null for a new design.</param>
    /// <param name="form">As typed.</param>
    /// <param name="actor">Author.</param>
    /// <param name="cancellation">Nothing is saved.</param>
    public async Task<Outcome<VesselDesign>> HandleAsync(
        Guid? id,
        DrawDesignForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var typed = new TypedDesign(form);
        if (typed.Read() is not { } content)
        {
            return typed.Refusals;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        content = content with { Least = await db.LeastExaminationsAsync(cancellation) };
        var drawn = id is null
            ? VesselDesign.Draw(
                form.Number ?? "",
                form.Title ?? "",
                content,
                actor,
                clock.GetUtcNow()
            )
            : await EditAsync(db, id.Value, form, content, actor, cancellation);
        if (!drawn.IsAccepted)
        {
            return drawn;
        }

        if (id is null)
        {
            db.Add(drawn.Value);
        }

        var saved = await db.SaveEditAsync(drawn.Value, form, cancellation);
        return saved.IsAccepted ? drawn : saved.Refusals.ToList();
    }

    private async Task<Outcome<VesselDesign>> EditAsync(
        WeldTraceDbContext db,
        Guid id,
        DrawDesignForm form,
        DesignContent content,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var design = await db.VesselDesigns.SingleOrDefaultAsync(d => d.Id == id, cancellation);
        if (design is null)
        {
            return new Refusal("design", "There is no such design revision.");
        }

        var edited = design.Edit(form.Title ?? "", content, actor, clock.GetUtcNow());
        return edited.IsAccepted ? design : edited.Refusals.ToList();
    }
}
