using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Tools.Enter;

public sealed class EnterToolForm
{
    public string? Mark { get; set; }

    public Guid DesignId { get; set; }

    public string? Pin { get; set; }

    public string? Shoulder { get; set; }

    /// <summary>Marks of the parts; null when none was typed.</summary>
    public ToolPartMarks? Parts =>
        string.IsNullOrWhiteSpace(Pin) && string.IsNullOrWhiteSpace(Shoulder)
            ? null
            : new(Pin ?? "", Shoulder ?? "");
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

        if (await TakenPartAsync(db, form, cancellation) is { } taken)
        {
            return taken;
        }

        var tool = Tool.Enter(form.Mark ?? "", design, actor, clock.GetUtcNow(), form.Parts);
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

    // A part is told by its mark wherever it is fitted.
    private static async Task<Refusal?> TakenPartAsync(
        WeldTraceDbContext db,
        EnterToolForm form,
        CancellationToken cancellation
    )
    {
        foreach (
            var (mark, field) in new[]
            {
                (form.Pin, nameof(form.Pin)),
                (form.Shoulder, nameof(form.Shoulder)),
            }
        )
        {
            if (
                !string.IsNullOrWhiteSpace(mark)
                && await db.FindToolWithPartAsync(mark, null, cancellation) is { } other
            )
            {
                return new Refusal(
                    "mark",
                    $"Part {mark.Trim()} was fitted to {other}; a part keeps its mark for good, so check it.",
                    field
                );
            }
        }

        return null;
    }
}
