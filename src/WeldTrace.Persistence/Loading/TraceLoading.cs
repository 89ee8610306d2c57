using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Persistence.Loading;

/// <summary>What the vessels that are looked for have in common; everything that is not null must hold at once.</summary>
public sealed record TraceQuestion
{
    public Guid? ToolId { get; init; }

    public Guid? MachineId { get; init; }

    public Guid? OperatorId { get; init; }

    /// <summary>Revisions of a procedure, any of which will do; null when it is not asked for.</summary>
    public IReadOnlyList<Guid>? ProcedureRevisionIds { get; init; }

    public Guid? InstrumentId { get; init; }

    public Guid? MaterialLotId { get; init; }

    public Guid? ComponentId { get; init; }

    /// <summary>A finding: its own vessel and those that it made somebody hold.</summary>
    public Guid? FindingId { get; init; }

    /// <summary>First instant of welding, or of measuring where an instrument is asked for.</summary>
    public DateTimeOffset? From { get; init; }

    /// <summary>First instant after the window.</summary>
    public DateTimeOffset? Until { get; init; }

    internal bool IsAboutRuns =>
        ToolId is not null
        || MachineId is not null
        || OperatorId is not null
        || ProcedureRevisionIds is not null
        || (InstrumentId is null && (From is not null || Until is not null));
}

public static class TraceLoading
{
    /// <summary>
    /// Every vessel that fits. Tool, machine, operator, procedure and window must meet in one weld; an instrument and the window in
    /// one test or fit-up.
    /// </summary>
    public static IQueryable<Vessel> Traced(this WeldTraceDbContext db, TraceQuestion asked)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(asked);
        var vessels = MadeOf(db, asked);
        if (asked.IsAboutRuns)
        {
            var runs = Runs(db, asked);
            vessels = vessels.Where(v => runs.Any(r => r.VesselId == v.Id));
        }

        if (asked.InstrumentId is { } instrument)
        {
            var measured = MeasuredWith(db, instrument, asked);
            vessels = vessels.Where(v => measured.Contains(v.Id));
        }

        if (asked.FindingId is { } finding)
        {
            var found = db
                .Findings.Where(f => f.Id == finding || f.EvidenceId == finding)
                .Select(f => f.VesselId);
            vessels = vessels.Where(v => found.Contains(v.Id));
        }

        return vessels;
    }

    private static IQueryable<Vessel> MadeOf(WeldTraceDbContext db, TraceQuestion asked)
    {
        // The index over the components knows only whole elements, which is what the containment asks for.
        var vessels = asked.MaterialLotId is { } lot
            ? db.Vessels.FromSql(
                $"SELECT * FROM vessels WHERE components @> jsonb_build_array(jsonb_build_object('materialLotId', {lot}))"
            )
            : db.Vessels;
        if (asked.ComponentId is { } part)
        {
            var of = db.Components.Where(c => c.Id == part).Select(c => c.VesselId);
            vessels = vessels.Where(v => of.Contains(v.Id));
        }

        return vessels;
    }

    private static IQueryable<WeldRun> Runs(WeldTraceDbContext db, TraceQuestion asked)
    {
        IQueryable<WeldRun> runs = db.WeldRuns;
        if (asked.ToolId is { } tool)
        {
            runs = runs.Where(r => r.ToolId == tool);
        }

        if (asked.MachineId is { } machine)
        {
            runs = runs.Where(r => r.MachineId == machine);
        }

        if (asked.OperatorId is { } welder)
        {
            runs = runs.Where(r => r.OperatorId == welder);
        }

        if (asked.ProcedureRevisionIds is { } revisions)
        {
            runs = runs.Where(r => revisions.Contains(r.ProcedureRevisionId));
        }

        if (asked.From is { } from)
        {
            runs = runs.Where(r => r.StartedAt >= from);
        }

        return asked.Until is { } until ? runs.Where(r => r.StartedAt < until) : runs;
    }

    private static IQueryable<Guid> MeasuredWith(
        WeldTraceDbContext db,
        Guid instrument,
        TraceQuestion asked
    )
    {
        var (from, until) = (
            asked.From ?? DateTimeOffset.MinValue,
            asked.Until ?? DateTimeOffset.MaxValue
        );
        return Tested(
                db.LeakTests.FromSql(
                    $"SELECT * FROM leak_tests WHERE instruments @> jsonb_build_array(jsonb_build_object('id', {instrument}))"
                ),
                from,
                until
            )
            .Concat(
                Tested(
                    db.PressureTests.FromSql(
                        $"SELECT * FROM pressure_tests WHERE instruments @> jsonb_build_array(jsonb_build_object('id', {instrument}))"
                    ),
                    from,
                    until
                )
            )
            .Concat(
                Tested(
                    db.Sections.FromSql(
                        $"SELECT * FROM sections WHERE instruments @> jsonb_build_array(jsonb_build_object('id', {instrument}))"
                    ),
                    from,
                    until
                )
            )
            .Concat(
                db.JointFitUps.Where(f =>
                        f.InstrumentId == instrument && f.MeasuredAt >= from && f.MeasuredAt < until
                    )
                    .Select(f => f.VesselId)
            );
    }

    private static IQueryable<Guid> Tested<TTest>(
        IQueryable<TTest> tests,
        DateTimeOffset from,
        DateTimeOffset until
    )
        where TTest : TestRecord =>
        tests.Where(t => t.TestedAt >= from && t.TestedAt < until).Select(t => t.VesselId);
}
