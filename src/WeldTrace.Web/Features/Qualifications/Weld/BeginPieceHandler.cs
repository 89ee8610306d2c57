using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Qualifications.Weld;

public sealed class BeginPieceForm
{
    /// <summary>Made when the form was shown, so that sending it twice begins one piece.</summary>
    public Guid Id { get; set; }

    public string? Machine { get; set; }

    public string? Tool { get; set; }

    // A form without any box ticked posts nothing, which is bound as null.
    public List<Guid> Lots
    {
        get;
        set => field = value ?? [];
    } = [];
}

/// <summary>What the page of a planned piece shows.</summary>
public sealed record BeginPieceView(
    QualificationRecords Records,
    PlannedPiece Planned,
    IReadOnlyList<MaterialLot> Lots,
    IReadOnlyList<Machine> Machines,
    IReadOnlyList<Tool> Tools
);

/// <summary>Begins the welding of a planned test piece.</summary>
public sealed class BeginPieceHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteDay day,
    TimeProvider clock
)
{
    private const int MostLots = 200;

    public async Task<BeginPieceView?> FindAsync(
        Guid id,
        string mark,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var records = await db.FindQualificationAsync(id, cancellation);
        if (records?.Record.Plan.Pieces.FirstOrDefault(p => p.Mark == mark) is not { } planned)
        {
            return null;
        }

        var content = records.Revision.Content;
        var alloys = new[] { content.Alloy, content.DetailsOrNone.Other?.Alloy };
        return new BeginPieceView(
            records,
            planned,
            await db
                .MaterialLots.AsNoTracking()
                .Where(l => alloys.Contains(l.Alloy))
                .OrderBy(l => l.Number)
                .Take(MostLots)
                .ToListAsync(cancellation),
            await db.Machines.AsNoTracking().OrderBy(m => m.Name).ToListAsync(cancellation),
            await db
                .Tools.AsNoTracking()
                .Where(t => t.DesignId == content.ToolDesignId && t.State == ToolState.InService)
                .OrderBy(t => t.Mark)
                .ToListAsync(cancellation)
        );
    }

    public async Task<Outcome<TestPiece>> HandleAsync(
        Guid id,
        string mark,
        BeginPieceForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var records = await db.FindQualificationAsync(id, cancellation);
        if (records?.Record.Plan.Pieces.FirstOrDefault(p => p.Mark == mark) is not { } planned)
        {
            return new Refusal("piece", "The plan has no such piece.");
        }

        var tool = await db.FindToolAsync(form.Tool, cancellation);
        var begun = TestPiece.Begin(
            FormIdentity.OrNew(form.Id, clock),
            new TestPieceFacts(
                records.Record,
                planned,
                records.Revision,
                records.Pieces,
                await db
                    .MaterialLots.AsNoTracking()
                    .Where(l => form.Lots.Contains(l.Id))
                    .OrderBy(l => l.Number)
                    .ToListAsync(cancellation),
                await db.FindMachineAsync(form.Machine, cancellation),
                tool,
                tool is null
                    ? null
                    : await db
                        .ToolDesigns.AsNoTracking()
                        .SingleAsync(d => d.Id == tool.DesignId, cancellation),
                await day.TodayAsync(cancellation)
            ),
            actor,
            clock.GetUtcNow()
        );
        if (!begun.IsAccepted)
        {
            return begun.Refusals.Select(AtField).ToList();
        }

        db.Add(begun.Value);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted ? begun : saved.Refusals.ToList();
    }

    private static Refusal AtField(Refusal refusal) =>
        refusal with
        {
            Field = refusal.Code switch
            {
                "F3" or "F5" => nameof(BeginPieceForm.Machine),
                "F6" => nameof(BeginPieceForm.Tool),
                "F7" => nameof(BeginPieceForm.Lots),
                _ => refusal.Field,
            },
        };
}
