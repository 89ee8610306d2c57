using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Tools.Designs;

public sealed class ToolUpkeepForm
{
    public string? LeastPinLength { get; set; }

    public string? LeastPinDiameter { get; set; }

    public string? InspectEvery { get; set; }

    public string? InspectEveryDays { get; set; }

    public string? InspectionProcedure { get; set; }
}

public sealed class LifeEvidenceForm
{
    public IFormFile? File { get; set; }
}

/// <summary>A design with the tools made to it.</summary>
public sealed record ToolDesignView(ToolDesign Design, IReadOnlyList<Tool> Tools);

/// <summary>Shows a tool design, lays down its wear limits and files the evidence for its life.</summary>
public sealed class ToolUpkeepHandler(IDbContextFactory<WeldTraceDbContext> contexts, ActDesk desk)
{
    public async Task<ToolDesignView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var design = await db
            .ToolDesigns.AsNoTracking()
            .SingleOrDefaultAsync(d => d.Id == id, cancellation);
        return design is null
            ? null
            : new ToolDesignView(
                design,
                await db
                    .Tools.AsNoTracking()
                    .Where(t => t.DesignId == id)
                    .OrderBy(t => t.Mark)
                    .ToListAsync(cancellation)
            );
    }

    public Task<Outcome> LayDownAsync(
        Guid id,
        ToolUpkeepForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var every = entries.OptionalNumber(
            form.InspectEvery,
            "m",
            "Metres between inspections",
            nameof(form.InspectEvery)
        );
        var upkeep = new ToolUpkeep(
            Number(entries, form.LeastPinLength, "Least pin length", nameof(form.LeastPinLength)),
            Number(
                entries,
                form.LeastPinDiameter,
                "Least pin diameter",
                nameof(form.LeastPinDiameter)
            ),
            every is null ? null : Length.FromMetres(every.InUnit()),
            entries.OptionalWhole(
                form.InspectEveryDays,
                "days",
                "Days between inspections",
                nameof(form.InspectEveryDays)
            ),
            form.InspectionProcedure ?? ""
        );
        return desk.DoAsync(
            PostedAct.On<ToolDesign>(id, m => m.Record.LayDownUpkeep(upkeep, actor, m.At)) with
            {
                Unread = entries.Refusals,
            },
            actor,
            cancellation
        );
    }

    public Task<Outcome> FileEvidenceAsync(
        Guid id,
        LifeEvidenceForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            PostedAct.On<ToolDesign>(
                id,
                m => m.Record.FileLifeEvidence(m.FileSha256, actor, m.At)
            ) with
            {
                File = form.File,
            },
            actor,
            cancellation
        );
    }

    private static Measured Number(Entries entries, string? text, string what, string field) =>
        entries.Number(text, ToolUpkeep.Unit, what, field);
}
