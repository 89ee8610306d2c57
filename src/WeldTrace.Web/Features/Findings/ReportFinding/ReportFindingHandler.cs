using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Findings.ReportFinding;

public sealed class ReportFindingHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<(Vessel Vessel, VesselDesign Design)?> FindAsync(
        string serial,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await FindAsync(db, serial, cancellation);
    }

    public async Task<Outcome> HandleAsync(
        string serial,
        ReportFindingForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.Findings.AnyAsync(f => f.Id == form.Id, cancellation))
        {
            return Outcome.Accepted;
        }

        if (await FindAsync(db, serial, cancellation) is not { } found)
        {
            return Outcome.Refused(
                "missing",
                $"There is no vessel {serial}. Look for it in the list of vessels."
            );
        }

        var entries = new Entries();
        var step = entries.Whole(form.StepSequence, "numbers", "Step", nameof(form.StepSequence));
        var place = form.ReadPlace(entries);
        if (entries.Refusals.Count > 0)
        {
            return Outcome.From(entries.Refusals);
        }

        form.Id = FormIdentity.OrNew(form.Id, clock);
        var finding = Finding.Report(
            form.Id,
            found.Vessel,
            found.Design,
            step,
            form.Description ?? "",
            place,
            actor,
            clock.GetUtcNow()
        );
        if (!finding.IsAccepted)
        {
            return finding.WithoutValue();
        }

        db.Add(finding.Value);
        return await db.SaveAsync(cancellation);
    }

    private static async Task<(Vessel Vessel, VesselDesign Design)?> FindAsync(
        WeldTraceDbContext db,
        string serial,
        CancellationToken cancellation
    )
    {
        var vessel = await db.Vessels.SingleOrDefaultAsync(v => v.Serial == serial, cancellation);
        return vessel is null
            ? null
            : (
                vessel,
                await db.VesselDesigns.SingleAsync(d => d.Id == vessel.DesignId, cancellation)
            );
    }
}
