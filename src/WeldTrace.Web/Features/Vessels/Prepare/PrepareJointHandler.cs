using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Prepare;

public sealed class CleanJointForm
{
    public string? Method { get; set; }

    public bool FixtureIsClean { get; set; }

    /// <summary>Minutes ago at which the cleaning ended.</summary>
    public string? MinutesAgo { get; set; } = "0";
}

public sealed class FitUpForm
{
    public string? Gap { get; set; }

    public string? Mismatch { get; set; }

    public string? InstrumentMark { get; set; }

    public string? Remark { get; set; }
}

/// <summary>A joint with its procedure and what was done to it before welding.</summary>
public sealed record JointPreparation(
    Vessel Vessel,
    Joint Joint,
    ProcedureRevision? Procedure,
    PreparationFacts Facts
);

/// <summary>Records how a joint was cleaned and fitted up.</summary>
public sealed class PrepareJointHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteDay day,
    TimeProvider clock
)
{
    public async Task<JointPreparation?> FindAsync(
        string serial,
        string jointCode,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await FindJointAsync(db, serial, jointCode, cancellation) is not var (vessel, joint))
        {
            return null;
        }

        return new JointPreparation(
            vessel,
            joint,
            await db
                .ProcedureRevisions.AsNoTracking()
                .SingleOrDefaultAsync(
                    p => p.Number == joint.ProcedureNumber && p.State == ProcedureState.Released,
                    cancellation
                ),
            (await db.LoadMaterialAsync(vessel, cancellation)).Preparation
        );
    }

    public async Task<Outcome> CleanAsync(
        string serial,
        string jointCode,
        CleanJointForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var ago = entries.Whole(
            form.MinutesAgo,
            "minutes",
            "Minutes since the cleaning ended",
            nameof(form.MinutesAgo)
        );
        if (entries.Refusals.Count > 0)
        {
            return Outcome.From(entries.Refusals);
        }

        var at = clock.GetUtcNow();
        return await RecordAsync(
            serial,
            jointCode,
            (vessel, _, _) =>
                Task.FromResult(
                    JointCleaning.Record(
                        vessel,
                        jointCode,
                        form.Method ?? "",
                        form.FixtureIsClean,
                        at.AddMinutes(-ago),
                        actor,
                        at
                    )
                ),
            cancellation
        );
    }

    public async Task<Outcome> FitUpAsync(
        string serial,
        string jointCode,
        FitUpForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var gap = entries.Number(form.Gap, "mm", "Largest gap", nameof(form.Gap));
        var mismatch = entries.Number(
            form.Mismatch,
            "mm",
            "Largest mismatch",
            nameof(form.Mismatch)
        );
        if (entries.Refusals.Count > 0)
        {
            return Outcome.From(entries.Refusals);
        }

        return await RecordAsync(
            serial,
            jointCode,
            async (vessel, db, token) =>
                JointFitUp.Record(
                    vessel,
                    jointCode,
                    gap,
                    mismatch,
                    await db.FindInstrumentAsync(form.InstrumentMark, token),
                    form.InstrumentMark ?? "",
                    form.Remark ?? "",
                    await day.TodayAsync(token),
                    actor,
                    clock.GetUtcNow()
                ),
            cancellation
        );
    }

    private async Task<Outcome> RecordAsync<T>(
        string serial,
        string jointCode,
        Func<Vessel, WeldTraceDbContext, CancellationToken, Task<Outcome<T>>> record,
        CancellationToken cancellation
    )
        where T : Record
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await FindJointAsync(db, serial, jointCode, cancellation) is not var (vessel, _))
        {
            return Outcome.Refused(
                "missing",
                $"There is no vessel {serial} with a joint {jointCode}. Look for it in the list of vessels."
            );
        }

        var recorded = await record(vessel, db, cancellation);
        if (!recorded.IsAccepted)
        {
            return recorded.WithoutValue();
        }

        db.Add(recorded.Value);
        return await db.SaveAsync(cancellation);
    }

    private static async Task<(Vessel Vessel, Joint Joint)?> FindJointAsync(
        WeldTraceDbContext db,
        string serial,
        string jointCode,
        CancellationToken cancellation
    )
    {
        var vessel = await db
            .Vessels.AsNoTracking()
            .SingleOrDefaultAsync(v => v.Serial == serial, cancellation);
        if (vessel is null)
        {
            return null;
        }

        var design = await db
            .VesselDesigns.AsNoTracking()
            .SingleAsync(d => d.Id == vessel.DesignId, cancellation);
        return design.Content.Joint(jointCode) is { } joint ? (vessel, joint) : null;
    }
}
