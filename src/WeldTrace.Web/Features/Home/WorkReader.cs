using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Marks;
using WeldTrace.Web.LogJudging;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Home;

/// <summary>What waits for a person, most urgent first.</summary>
public sealed class WorkReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SignalWatch signals,
    SiteDay day,
    TimeProvider clock
)
{
    private const int MostSteps = 20;

    public async Task<IReadOnlyList<WaitingWork>> ReadAsync(
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var today = await day.TodayAsync(cancellation);
        List<WaitingWork> all =
        [
            .. await FindingsAsync(db, actor, cancellation),
            .. await UnsignedAsync(db, actor, cancellation),
            .. await SignatureWork.ReadAsync(db, actor, cancellation),
            .. await DeadlineWork.ReadAsync(db, actor, today, cancellation),
            .. await ProductionWork.ReadAsync(db, actor, clock.GetUtcNow(), cancellation),
            .. await ProceduresAsync(db, actor, cancellation),
            .. await SignalWork.ReadAsync(signals, actor, cancellation),
            .. await ToolWork.ReadAsync(db, actor, cancellation),
            .. await RepairWork.ReadAsync(db, actor, cancellation),
            .. await StepsAsync(db, actor, cancellation),
        ];
        return [.. all.OrderBy(w => w.Urgency)];
    }

    private static async Task<IEnumerable<WaitingWork>> FindingsAsync(
        WeldTraceDbContext db,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (!actor.HasAny(Role.Inspector, Role.QualityManager))
        {
            return await HeldAsync(db, actor, cancellation);
        }

        var findings = await db
            .Findings.AsNoTracking()
            .Where(f => f.State != FindingState.Closed)
            .OrderBy(f => f.Number)
            .ToListAsync(cancellation);
        return findings.Select(f =>
            f.State == FindingState.Open
                ? new WaitingWork(
                    Urgency.Stopped,
                    Mark.Held,
                    "on hold",
                    $"Decide on {f.Label}, vessel {f.VesselSerial}",
                    Routes.Finding(f.Id)
                )
                : new WaitingWork(
                    Urgency.ToSign,
                    Mark.InProgress,
                    "to verify",
                    $"Verify and close {f.Label}, vessel {f.VesselSerial}",
                    Routes.Finding(f.Id)
                )
        );
    }

    // Those who can't decide on a finding still want to know what stands still.
    private static async Task<IEnumerable<WaitingWork>> HeldAsync(
        WeldTraceDbContext db,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (!actor.HasAny(Role.Operator, Role.Engineer))
        {
            return [];
        }

        var held = await db
            .Vessels.AsNoTracking()
            .Where(v => v.State == VesselState.OnHold)
            .OrderBy(v => v.Serial)
            .Select(v => v.Serial)
            .Take(MostSteps)
            .ToListAsync(cancellation);
        return held.Select(serial => new WaitingWork(
            Urgency.Stopped,
            Mark.Held,
            "on hold",
            $"{serial} waits for a decision on its findings",
            Routes.Vessel(serial)
        ));
    }

    private static async Task<IEnumerable<WaitingWork>> UnsignedAsync(
        WeldTraceDbContext db,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var runs = await db
            .WeldRuns.AsNoTracking()
            .Where(r => r.OperatorId == actor.PersonId && r.SignedAt == null)
            .OrderBy(r => r.StartedAt)
            .ToListAsync(cancellation);
        return runs.Select(r => new WaitingWork(
            Urgency.ToSign,
            Mark.Warning,
            "not signed",
            $"Finish and sign your run of {r.Label}",
            r.Repair is null ? Routes.WeldStep(r.VesselSerial, r.StepSequence) : Routes.Run(r.Id)
        ));
    }

    private static async Task<IEnumerable<WaitingWork>> ProceduresAsync(
        WeldTraceDbContext db,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (!actor.HasAny(Role.Engineer, Role.QualityManager))
        {
            return [];
        }

        var revisions = await db
            .ProcedureRevisions.AsNoTracking()
            .Where(p =>
                p.State == ProcedureState.Draft
                || p.State == ProcedureState.Trial
                || p.State == ProcedureState.Qualified
            )
            .OrderBy(p => p.Number)
            .ToListAsync(cancellation);
        return revisions
            .Where(p =>
                p.State == ProcedureState.Qualified
                    ? p.AuthorId != actor.PersonId
                    : p.AuthorId == actor.PersonId
            )
            .Select(p => new WaitingWork(
                Urgency.Ready,
                Mark.Ready,
                ProcedureRevision.StateWord(p.State),
                $"Take procedure {p.Label} on",
                Routes.Procedure(p.Id)
            ));
    }

    private static async Task<IEnumerable<WaitingWork>> StepsAsync(
        WeldTraceDbContext db,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var vessels = await db
            .Vessels.AsNoTracking()
            .Where(v => v.State == VesselState.Planned || v.State == VesselState.InWork)
            .OrderBy(v => v.Serial)
            .ToListAsync(cancellation);
        return vessels
            .Where(v => v.NextStep is { } next && RolesFor(next.Kind).Any(r => actor.HasAny(r)))
            .Take(MostSteps)
            .Select(v => new WaitingWork(
                Urgency.Ready,
                Mark.Ready,
                "ready",
                $"{v.Serial}: {v.NextStep!.Title}",
                Routes.Step(v.Serial, v.NextStep.Sequence)
            ));
    }

    private static Role[] RolesFor(StepKind kind) =>
        kind switch
        {
            StepKind.Weld => [Role.Operator],
            StepKind.Preparation => [Role.Operator, Role.Inspector],
            _ => [Role.Inspector],
        };
}
