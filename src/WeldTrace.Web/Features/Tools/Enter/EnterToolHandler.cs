using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Tools.Enter;

public sealed class EnterToolForm
{
    public string? Mark { get; set; }

    public Guid DesignId { get; set; }
}

public sealed class EnterToolHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<IReadOnlyList<ToolDesign>> DesignsAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .ToolDesigns.AsNoTracking()
            .OrderBy(d => d.Number)
            .ThenByDescending(d => d.RevisionIndex)
            .ToListAsync(cancellation);
    }

    public async Task<Outcome<Tool>> HandleAsync(
        EnterToolForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var design = await db
            .ToolDesigns.AsNoTracking()
            .SingleOrDefaultAsync(d => d.Id == form.DesignId, cancellation);
        if (design is null)
        {
            return new Refusal("design", "Choose the tool design.", nameof(form.DesignId));
        }

        var tool = Tool.Enter(form.Mark ?? "", design, actor, clock.GetUtcNow());
        if (!tool.IsAccepted)
        {
            return tool;
        }

        db.Add(tool.Value);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted
            ? tool
            : saved
                .Refusals.Select(r => r.Code == "exists" ? r with { Field = nameof(form.Mark) } : r)
                .ToList();
    }
}
