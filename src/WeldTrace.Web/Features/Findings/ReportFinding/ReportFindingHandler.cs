using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Findings.ReportFinding;

public sealed class ReportFindingHandler(IDbContextFactory<WeldTraceDbContext> contexts, TimeProvider clock)
{
    public async Task<(Vessel Vessel, VesselDesign Design)?> FindAsync(string serial, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await FindAsync(db, serial, cancellation);
    }

    public async Task<Outcome<Finding>> HandleAsync(string serial, ReportFindingForm form, Actor actor, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await FindAsync(db, serial, cancellation) is not { } found)
        {
            return new Refusal("missing", $"There is no vessel {serial}. Look for it in the list of vessels.");
        }

        var entries = new Entries();
        var step = entries.Whole(form.StepSequence, "numbers", "Step", nameof(form.StepSequence));
        var place = form.ReadPlace(entries);
        if (entries.Refusals.Count > 0)
        {
            return entries.Refusals.ToList();
        }

        var finding = Finding.Report(found.Vessel, found.Design, step, form.Description ?? "", place, actor, clock.GetUtcNow());
        if (!finding.IsAccepted)
        {
            return finding;
        }

        db.Add(finding.Value);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted ? finding : saved.Refusals.ToList();
    }

    private static async Task<(Vessel Vessel, VesselDesign Design)?> FindAsync(
        WeldTraceDbContext db,
        string serial,
        CancellationToken cancellation
    )
    {
        var vessel = await db.Vessels.SingleOrDefaultAsync(v => v.Serial == serial, cancellation);
        return vessel is null ? null : (vessel, await db.VesselDesigns.SingleAsync(d => d.Id == vessel.DesignId, cancellation));
    }
}
