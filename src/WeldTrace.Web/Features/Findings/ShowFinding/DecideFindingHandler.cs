using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Findings.ShowFinding;

/// <summary>Decides on a finding, and closes it after verification.</summary>
public sealed class DecideFindingHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    TimeProvider clock
)
{
    public async Task<Outcome> DecideAsync(
        Guid id,
        DecideFindingForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        if (!Enum.TryParse<DispositionKind>(form.Decision, out var kind) || !Enum.IsDefined(kind))
        {
            return Outcome.Refused(
                "decision",
                "Choose what happens to the vessel.",
                nameof(form.Decision)
            );
        }

        return await ActAsync(
            id,
            form.Password,
            Finding.DispositionMeaning,
            actor,
            (facts, at) => Decide(facts, kind, form, actor, at),
            cancellation
        );
    }

    public async Task<Outcome> CloseAsync(
        Guid id,
        CloseFindingForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return await ActAsync(
            id,
            form.Password,
            Finding.ClosingMeaning,
            actor,
            (facts, at) =>
                facts.Finding.Close(
                    form.Note ?? "",
                    facts.Vessel,
                    facts.All,
                    facts.WeldedBy,
                    actor,
                    at
                ),
            cancellation
        );
    }

    private static Outcome Decide(
        FindingFacts facts,
        DispositionKind kind,
        DecideFindingForm form,
        Actor actor,
        DateTimeOffset at
    )
    {
        var entries = new Entries();
        var repair =
            kind == DispositionKind.Repair
                ? new RepairFacts(
                    facts.Procedures.FirstOrDefault(p => p.Id == form.Procedure),
                    facts.Design,
                    form.ReadPlace(facts.Design.Content, entries),
                    facts.All
                )
                : null;
        return entries.Refusals.Count > 0
            ? Outcome.From(entries.Refusals)
            : facts.Finding.Dispose(
                kind,
                form.Reason ?? "",
                facts.Vessel,
                facts.WeldedBy,
                actor,
                at,
                repair
            );
    }

    private async Task<Outcome> ActAsync(
        Guid id,
        string? password,
        string meaning,
        Actor actor,
        Func<FindingFacts, DateTimeOffset, Outcome> act,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        var proved = await passwords.ForSignatureAsync(actor, password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await FindAsync(db, id, cancellation) is not { } facts)
        {
            return Outcome.Refused(
                "missing",
                "There is no such finding. Look for it in the list of findings."
            );
        }

        var at = clock.GetUtcNow();
        var outcome = act(facts, at);
        if (!outcome.IsAccepted)
        {
            return outcome;
        }

        db.Add(Signature.Of(facts.Finding, actor, meaning, at));
        return await db.SaveAsync(cancellation);
    }

    private static async Task<FindingFacts?> FindAsync(
        WeldTraceDbContext db,
        Guid id,
        CancellationToken cancellation
    )
    {
        if (
            await db.Findings.SingleOrDefaultAsync(f => f.Id == id, cancellation) is not { } finding
        )
        {
            return null;
        }

        var vessel = await db.Vessels.SingleAsync(v => v.Id == finding.VesselId, cancellation);
        return new FindingFacts(
            finding,
            vessel,
            await db.VesselDesigns.SingleAsync(d => d.Id == vessel.DesignId, cancellation),
            await db.Findings.Where(f => f.VesselId == finding.VesselId).ToListAsync(cancellation),
            await db.WhoWeldedAsync(finding.VesselId, cancellation),
            await db
                .ProcedureRevisions.AsNoTracking()
                .Where(p => p.State == ProcedureState.Released)
                .ToListAsync(cancellation)
        );
    }

    private sealed record FindingFacts(
        Finding Finding,
        Vessel Vessel,
        VesselDesign Design,
        IReadOnlyCollection<Finding> All,
        IReadOnlyCollection<Guid> WeldedBy,
        IReadOnlyList<ProcedureRevision> Procedures
    );
}
