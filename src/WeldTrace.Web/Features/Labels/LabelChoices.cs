using System.Linq.Expressions;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Labels;

/// <summary>Reads the records of each kind as labels show them.</summary>
internal static class LabelChoices
{
    /// <param name="db">Context.</param>
    /// <param name="kind">Kind.</param>
    /// <param name="text">Text that the mark has in it; for records in use only.</param>
    /// <param name="ids">Records to read whatever they are; null to search.</param>
    /// <param name="cancellation">Ends the reading.</param>
    public static Task<IReadOnlyList<LabelChoice>> ReadAsync(
        WeldTraceDbContext db,
        LabelKind kind,
        string text,
        IReadOnlyCollection<Guid>? ids,
        CancellationToken cancellation
    )
    {
        var like = LikeText.Containing(text);
        return kind switch
        {
            LabelKind.Tools => ReadAsync(
                db.Tools,
                ids,
                t =>
                    t.State != ToolState.Retired
                    && EF.Functions.ILike(t.Mark, like, LikeText.EscapeMark),
                t => t.Mark,
                Of,
                cancellation
            ),
            LabelKind.Components => ReadAsync(
                db.Components,
                ids,
                IsFree(like),
                c => c.Serial,
                Of,
                cancellation
            ),
            LabelKind.Instruments => ReadAsync(
                db.Instruments,
                ids,
                i =>
                    i.WithdrawnBecause == null
                    && EF.Functions.ILike(i.Mark, like, LikeText.EscapeMark),
                i => i.Mark,
                Of,
                cancellation
            ),
            LabelKind.Machines => ReadAsync(
                db.Machines,
                ids,
                m => EF.Functions.ILike(m.Name, like, LikeText.EscapeMark),
                m => m.Name,
                Of,
                cancellation
            ),
            LabelKind.Lots => ReadAsync(
                db.MaterialLots,
                ids,
                l => EF.Functions.ILike(l.Number, like, LikeText.EscapeMark),
                l => l.Number,
                Of,
                cancellation
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
        };
    }

    private static Expression<Func<CutComponent, bool>> IsFree(string like) =>
        c =>
            c.VesselId == null
            && c.ScrappedBecause == null
            && EF.Functions.ILike(c.Serial, like, LikeText.EscapeMark);

    private static async Task<IReadOnlyList<LabelChoice>> ReadAsync<T>(
        IQueryable<T> records,
        IReadOnlyCollection<Guid>? ids,
        Expression<Func<T, bool>> inUse,
        Expression<Func<T, string>> mark,
        Func<T, LabelChoice> of,
        CancellationToken cancellation
    )
        where T : Record
    {
        var fitting = ids is null ? records.Where(inUse) : records.Where(r => ids.Contains(r.Id));
        var read = await fitting
            .AsNoTracking()
            .OrderBy(mark)
            .Take(LabelReader.Most)
            .ToListAsync(cancellation);
        return [.. read.Select(of)];
    }

    private static LabelChoice Of(Tool tool) =>
        new(tool.Id, tool.Mark, ["tool", tool.DesignLabel], Routes.Tool(tool.Id));

    private static LabelChoice Of(CutComponent component) =>
        new(
            component.Id,
            component.Serial,
            [component.PartKind, $"lot {component.LotNumber}", $"cast {component.CastNumber}"],
            Routes.Component(component.Id)
        );

    private static LabelChoice Of(Instrument instrument) =>
        new(
            instrument.Id,
            instrument.Mark,
            [
                InstrumentRules.Word(instrument.Measures),
                instrument switch
                {
                    { Text.IsIndicationOnly: true } => "for indication only",
                    { DueOn: { } due } => $"calibration due {due:yyyy-MM-dd}",
                    _ => "not calibrated",
                },
            ],
            Routes.Instrument(instrument.Id)
        );

    private static LabelChoice Of(Machine machine) =>
        new(machine.Id, machine.Name, ["machine"], Routes.Machine(machine.Id));

    private static LabelChoice Of(MaterialLot lot) =>
        new(
            lot.Id,
            lot.Number,
            [$"{lot.Alloy}-{lot.Temper}", $"cast {lot.CastNumber}"],
            Routes.MaterialLot(lot.Id)
        );
}
