using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;

namespace WeldTrace.Persistence.Loading;

public static class TestFactsLoading
{
    /// <summary>The vessel of a serial number with one step of its route and all that a test looks at; null when there is none. Tracked.</summary>
    public static async Task<TestFacts?> FindTestFactsAsync(
        this WeldTraceDbContext db,
        string serial,
        int sequence,
        ExaminerFacts examiner,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var vessel = await db.Vessels.SingleOrDefaultAsync(v => v.Serial == serial, cancellation);
        if (vessel?.Step(sequence) is not { } step)
        {
            return null;
        }

        return new TestFacts(
            vessel,
            step,
            await db.VesselDesigns.SingleAsync(d => d.Id == vessel.DesignId, cancellation),
            await db.Findings.Where(f => f.VesselId == vessel.Id).ToListAsync(cancellation)
        )
        {
            Examiner = examiner,
            Lot = await db.FindLotOfAsync(vessel, cancellation),
            Unsigned = await UnsignedAsync(db, vessel.Id, sequence, cancellation),
            Examined = StepSignOff.Examined(
                vessel,
                await db
                    .StepSignOffs.AsNoTracking()
                    .Where(s => s.VesselId == vessel.Id)
                    .ToListAsync(cancellation)
            ),
        };
    }

    /// <summary>The certificates of whoever tests or signs, on the day at the site.</summary>
    public static async Task<ExaminerFacts> ExaminerAsync(
        this WeldTraceDbContext db,
        Actor actor,
        DateTimeOffset at,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(actor);
        var site = await db.Sites.AsNoTracking().SingleOrDefaultAsync(cancellation);
        return new ExaminerFacts(
            await db
                .Certificates.AsNoTracking()
                .Where(c => c.PersonId == actor.PersonId)
                .ToListAsync(cancellation),
            site?.DayOf(at) ?? DateOnly.FromDateTime(at.UtcDateTime)
        );
    }

    /// <summary>What the register has of each instrument that somebody typed or scanned.</summary>
    public static async Task<IReadOnlyList<TypedInstrument>> TypedInstrumentsAsync(
        this WeldTraceDbContext db,
        CancellationToken cancellation,
        params IReadOnlyList<(string Field, string? Typed)> typed
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        List<TypedInstrument> found = [];
        foreach (var (field, text) in typed)
        {
            found.Add(new(field, text, await db.FindInstrumentAsync(text, cancellation)));
        }

        return found;
    }

    /// <summary>A test of any kind; null when there is none. Tracked.</summary>
    public static async Task<TestRecord?> FindTestAsync(
        this WeldTraceDbContext db,
        Guid id,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        return (TestRecord?)await db.LeakTests.SingleOrDefaultAsync(t => t.Id == id, cancellation)
            ?? (TestRecord?)
                await db.PressureTests.SingleOrDefaultAsync(t => t.Id == id, cancellation)
            ?? await db.Sections.SingleOrDefaultAsync(t => t.Id == id, cancellation);
    }

    /// <summary>Everyone who welded on a vessel.</summary>
    public static async Task<IReadOnlyCollection<Guid>> WhoWeldedAsync(
        this WeldTraceDbContext db,
        Guid vesselId,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        return await db
            .WeldRuns.Where(r => r.VesselId == vesselId)
            .Select(r => r.OperatorId)
            .Distinct()
            .ToListAsync(cancellation);
    }

    private static async Task<IReadOnlyList<TestRecord>> UnsignedAsync(
        WeldTraceDbContext db,
        Guid vesselId,
        int sequence,
        CancellationToken cancellation
    )
    {
        List<TestRecord> unsigned = [];
        unsigned.AddRange(await Unsigned(db.LeakTests).ToListAsync(cancellation));
        unsigned.AddRange(await Unsigned(db.PressureTests).ToListAsync(cancellation));
        unsigned.AddRange(await Unsigned(db.Sections).ToListAsync(cancellation));
        return unsigned;

        IQueryable<T> Unsigned<T>(IQueryable<T> tests)
            where T : TestRecord =>
            tests.Where(t =>
                t.VesselId == vesselId
                && t.StepSequence == sequence
                && t.SignedAt == null
                && t.Withdrawal == null
            );
    }
}
