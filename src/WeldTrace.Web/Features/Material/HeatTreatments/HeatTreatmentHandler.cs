using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Files;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Material.HeatTreatments;

/// <summary>Enters a furnace load with the parts that were in it.</summary>
public sealed class HeatTreatmentHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteDay day,
    TimeProvider clock
)
{
    public async Task<Outcome<HeatTreatment>> HandleAsync(
        HeatTreatmentForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var entries = new Entries();
        var (asked, kept) = (form.ReadAsked(entries), form.ReadKept(entries));
        var on = entries.Day(form.On, "the day of the treatment", nameof(form.On));
        List<Refusal> refusals = [.. entries.Refusals];
        var chart = await PaperReader.ReadOptionalAsync(
            form.File,
            nameof(form.File),
            refusals,
            cancellation
        );
        var parts = await PartsAsync(db, form.Lines, refusals, cancellation);
        if (refusals.Count > 0)
        {
            return refusals;
        }

        var treatment = HeatTreatment.Enter(
            form.Number ?? "",
            form.Furnace ?? "",
            on,
            asked,
            kept,
            await db.FindInstrumentAsync(form.InstrumentMark, cancellation),
            chart?.Sha256,
            parts,
            await day.TodayAsync(cancellation),
            actor,
            clock.GetUtcNow()
        );
        if (!treatment.IsAccepted)
        {
            return treatment;
        }

        await db.KeepAsync(chart!, cancellation);
        db.Add(treatment.Value);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted
            ? treatment
            : saved
                .Refusals.Select(r =>
                    r.Code == "exists" ? r with { Field = nameof(form.Number) } : r
                )
                .ToList();
    }

    private static async Task<List<TreatedPart>> PartsAsync(
        WeldTraceDbContext db,
        IReadOnlyList<string> codes,
        List<Refusal> refusals,
        CancellationToken cancellation
    )
    {
        List<TreatedPart> parts = [];
        foreach (var code in codes)
        {
            var component = await db.FindComponentAsync(code, cancellation);
            var vessel = component is null
                ? await db.Vessels.SingleOrDefaultAsync(v => v.Serial == code, cancellation)
                : null;
            if (component is not null)
            {
                parts.Add(new(component.Id, component.Serial, false));
            }
            else if (vessel is not null)
            {
                parts.Add(new(vessel.Id, vessel.Serial, true));
            }
            else
            {
                refusals.Add(
                    new(
                        "part",
                        $"No component and no vessel has the serial '{code}'; check it, or enter the component first.",
                        nameof(HeatTreatmentForm.Parts)
                    )
                );
            }
        }

        return parts;
    }
}
