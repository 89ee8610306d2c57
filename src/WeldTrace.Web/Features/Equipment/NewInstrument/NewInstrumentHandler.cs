using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Equipment.NewInstrument;

/// <summary>Enters an instrument.</summary>
public sealed class NewInstrumentHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<Outcome<Instrument>> HandleAsync(
        NewInstrumentForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var text = form.Read(entries);
        List<Refusal> refusals = [.. entries.Refusals];
        if (string.IsNullOrWhiteSpace(form.Unit) || form.Unit.Length > 20)
        {
            refusals.Add(
                new("unit", "Give the unit that the instrument reads in.", nameof(form.Unit))
            );
        }

        if (refusals.Count > 0)
        {
            return refusals;
        }

        var instrument = Instrument.Enter(text, actor, clock.GetUtcNow());
        if (!instrument.IsAccepted)
        {
            return instrument;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.Add(instrument.Value);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted
            ? instrument
            : saved
                .Refusals.Select(r => r.Code == "exists" ? r with { Field = nameof(form.Mark) } : r)
                .ToList();
    }
}
